import { keepPreviousData, useQueries, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo, useRef } from 'react';
import type { BatchView } from '../shared/api-types';
import { useBatchList } from '../shared/batch-queries';
import type { ClimateFlag, ClimateQuantity, PhaseRecipe, PlannedSetpoint, Sensor } from '../shared/climate-types';
import { answer, api, newKey, once } from '../shared/http';
import { useLiveEvent } from '../shared/live-stream';
import { groups, keys } from '../shared/query-keys';
import { recipeInForce } from '../shared/recipes';
import { phaseOf } from './climate-state';

/** Asked again this often where no live event tells of new readings. */
const AGAIN_MS = 60_000;

/** All houses together are renewed at most this often, however many of them report. */
const ALL_AGAIN_MS = 300;

/** Renews the houses of which readings came, at once, and all houses together as soon as they may be. */
export function useLiveClimate(): void {
  const queries = useQueryClient();
  const resting = useRef<{ readonly timer: ReturnType<typeof setTimeout>; again: boolean }>(undefined);
  useEffect(() => () => clearTimeout(resting.current?.timer), []);
  const renewAll = () => {
    if (resting.current) {
      resting.current.again = true;
      return;
    }
    void queries.invalidateQueries({ queryKey: groups.glances() });
    const timer = setTimeout(() => {
      const again = resting.current?.again;
      resting.current = undefined;
      if (again) renewAll();
    }, ALL_AGAIN_MS);
    resting.current = { timer, again: false };
  };
  useLiveEvent('climate', ({ houses }) => {
    renewAll();
    for (const house of houses) void queries.invalidateQueries({ queryKey: groups.house(house) });
  });
}

/** How every house of a site is now, with its last hours, in one question; by the code of the house. */
export function useGlances(site: string | undefined, quantities: readonly ClimateQuantity[], { from, to }: Period) {
  const asked = { site, quantities: quantities.join(','), from, to };
  const glances = useQuery({
    queryKey: keys.climateGlance(asked),
    queryFn: ({ signal }) => answer(api.GET('/api/climate', { params: { query: asked }, signal })),
    refetchInterval: AGAIN_MS,
    placeholderData: keepPreviousData,
  });
  const houses = glances.data?.houses;
  return { ...glances, byHouse: useMemo(() => new Map(houses?.map((each) => [each.house, each])), [houses]) };
}

export function useClimateNow(house: string) {
  return useQuery({
    queryKey: keys.climateNow(house),
    queryFn: ({ signal }) => answer(api.GET('/api/houses/{code}/now', { params: { path: { code: house } }, signal })),
    refetchInterval: AGAIN_MS,
  });
}

interface Period {
  readonly from: string;
  readonly to: string;
}

const seriesQuery = (house: string, quantity: ClimateQuantity, { from, to }: Period) => ({
  queryKey: keys.climateSeries(house, quantity, from, to),
  queryFn: ({ signal }: { signal: AbortSignal }) =>
    answer(
      api.GET('/api/houses/{code}/climate', {
        params: { path: { code: house }, query: { from, to, quantity } },
        signal,
      }),
    ),
  refetchInterval: AGAIN_MS,
});

export function useSeries(house: string, quantity: ClimateQuantity, period: Period) {
  return useQuery(seriesQuery(house, quantity, period));
}

export function useAllSeries(house: string, quantities: readonly ClimateQuantity[], period: Period) {
  return useQueries({ queries: quantities.map((quantity) => seriesQuery(house, quantity, period)) });
}

export function useSensors() {
  return useQuery({
    queryKey: keys.setupList('sensors'),
    queryFn: ({ signal }) => answer(api.GET('/api/sensors', { signal })),
  });
}

/** When each sensor of `houses` was last seen, by its code; a house that has not answered is missing. */
export function useSensorHealth(houses: readonly string[]) {
  return useQueries({
    queries: houses.map((house) => ({
      queryKey: keys.sensorHealth(house),
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        answer(api.GET('/api/houses/{code}/sensors', { params: { path: { code: house } }, signal })),
      refetchInterval: AGAIN_MS,
    })),
    combine: (results) => ({
      pending: results.some(({ isPending }) => isPending),
      failed: results.some(({ isError }) => isError),
      bySensor: new Map(results.flatMap(({ data }) => data ?? []).map((each) => [each.sensor, each])),
    }),
  });
}

/** Readings of the last hours as they came, oldest first; renewed with those of its house. */
export function useSensorReadings({ code, house }: Sensor, from: string) {
  return useQuery({
    queryKey: keys.sensorReadings(house, code, from),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/sensors/{code}/readings', { params: { path: { code }, query: { from } }, signal })),
    refetchInterval: AGAIN_MS,
  });
}

export function useSetpointPlan(house: string) {
  return useQuery({
    queryKey: keys.setpoints(house),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/houses/{code}/setpoints', { params: { path: { code: house } }, signal })),
  });
}

export function planSetpoint(house: string, mediumC: number | null, from: string): Promise<PlannedSetpoint> {
  return answer(
    api.POST('/api/houses/{code}/setpoints', {
      params: { path: { code: house }, header: once(newKey()) },
      body: { mediumC, from },
    }),
  );
}

/** The whole line of flags at once, or back again. */
export function overrideFlag(flag: ClimateFlag, overridden: boolean, reason: string): Promise<unknown> {
  const asked = {
    params: { path: { id: flag.id ?? '' }, header: once(newKey()) },
    body: { reason, until: flag.until },
  };
  return answer(overridden ? api.POST('/api/flags/{id}/override', asked) : api.POST('/api/flags/{id}/restore', asked));
}

/** A batch with what its recipe asks of the house now. */
export interface ResidentBatch {
  readonly batch: BatchView;
  /** Undefined while the recipe is on its way. */
  readonly phase: PhaseRecipe | undefined;
}

/** The batches of houses with the phase each is in. */
export function useResidentBatches(
  site: string | undefined,
  nowMs: number,
): ReadonlyMap<string, readonly ResidentBatch[]> {
  const batches = useBatchList({ site, state: 'live' }).data?.batches;
  const crops = useMemo(() => [...new Set(batches?.map(({ crop }) => crop))].sort(), [batches]);
  const recipes = useQueries({
    queries: crops.map((crop) => ({
      queryKey: keys.recipeInForce(crop),
      queryFn: ({ signal }: { signal: AbortSignal }) => recipeInForce(crop, signal),
      staleTime: Infinity,
    })),
    combine: (results) => results.map(({ data }) => data),
  });
  return useMemo(() => {
    const byCrop = new Map(crops.map((crop, i) => [crop, recipes[i]]));
    const byHouse = new Map<string, ResidentBatch[]>();
    for (const batch of batches ?? []) {
      const recipe = byCrop.get(batch.crop);
      const phase = recipe && phaseOf(batch, recipe, nowMs);
      const resident = { batch, phase: recipe?.phases.find((each) => each.phase === phase) };
      byHouse.set(batch.house, [...(byHouse.get(batch.house) ?? []), resident]);
    }
    return byHouse;
  }, [batches, crops, recipes, nowMs]);
}
