import { keepPreviousData, useQueries, useQuery, useQueryClient } from '@tanstack/react-query';
import { useMemo, useRef } from 'react';
import type { BatchView } from '../shared/api-types';
import { useBatchList } from '../shared/batch-queries';
import type {
  ClimateFlag,
  ClimateNow,
  ClimateQuantity,
  ClimateSeries,
  CropRecipe,
  PhaseRecipe,
  PlannedSetpoint,
  Sensor,
  SensorHealth,
  SensorReading,
} from '../shared/climate-types';
import { at, getJson, newKey, postJson } from '../shared/http';
import { useLiveEvent } from '../shared/live-stream';
import { phaseOf } from './climate-state';

/** Asked again this often where no live event tells of new readings. */
const AGAIN_MS = 60_000;

/** All houses together are renewed at most this often, however many of them report. */
const ALL_AGAIN_MS = 1_000;
const ALL_HOUSES = ['climate', 'all houses'] as const;

/** Renews the houses of which readings came, at once. */
export function useLiveClimate(): void {
  const queries = useQueryClient();
  const waiting = useRef<{ again: boolean }>(undefined);
  const renewAll = () => {
    if (waiting.current) {
      waiting.current.again = true;
      return;
    }
    const wait = { again: false };
    waiting.current = wait;
    void queries.invalidateQueries({ queryKey: ALL_HOUSES });
    setTimeout(() => {
      waiting.current = undefined;
      if (wait.again) renewAll();
    }, ALL_AGAIN_MS);
  };
  useLiveEvent('climate', ({ houses }) => {
    renewAll();
    for (const house of houses) void queries.invalidateQueries({ queryKey: ['climate', house] });
  });
}

export interface HouseGlanceAnswer extends ClimateNow {
  readonly series: readonly Pick<ClimateSeries, 'quantity' | 'unit' | 'hours'>[];
}

/** How every house of a site is now, with its last hours, in one question; by the code of the house. */
export function useGlances(site: string | undefined, quantities: readonly ClimateQuantity[], { from, to }: Period) {
  const answer = useQuery({
    queryKey: [...ALL_HOUSES, site, quantities, from, to],
    queryFn: ({ signal }) =>
      getJson<{ readonly houses: readonly HouseGlanceAnswer[] }>(
        at`/climate`,
        { site, quantities: quantities.join(','), from, to },
        signal,
      ),
    refetchInterval: AGAIN_MS,
    placeholderData: keepPreviousData,
  });
  const houses = answer.data?.houses;
  const byHouse = useMemo(() => new Map(houses?.map((each) => [each.house, each])), [houses]);
  return { ...answer, byHouse };
}

export function useClimateNow(house: string) {
  return useQuery({
    queryKey: ['climate', house, 'now'],
    queryFn: ({ signal }) => getJson<ClimateNow>(at`/houses/${house}/now`, undefined, signal),
    refetchInterval: AGAIN_MS,
  });
}

interface Period {
  readonly from: string;
  readonly to: string;
}

const seriesQuery = (house: string, quantity: ClimateQuantity, { from, to }: Period) => ({
  queryKey: ['climate', house, 'series', quantity, from, to],
  queryFn: ({ signal }: { signal: AbortSignal }) =>
    getJson<ClimateSeries>(at`/houses/${house}/climate`, { from, to, quantity }, signal),
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
    queryKey: ['setup', 'sensors'],
    queryFn: ({ signal }) => getJson<readonly Sensor[]>(at`/sensors`, undefined, signal),
  });
}

/** When each sensor of `houses` was last heard, by its code; a house that has not answered is missing. */
export function useSensorHealth(houses: readonly string[]) {
  return useQueries({
    queries: houses.map((house) => ({
      queryKey: ['climate', house, 'sensors'],
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        getJson<readonly SensorHealth[]>(at`/houses/${house}/sensors`, undefined, signal),
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
    queryKey: ['climate', house, 'raw', code, from],
    queryFn: ({ signal }) =>
      getJson<{ readonly readings: readonly SensorReading[] }>(at`/sensors/${code}/readings`, { from }, signal),
    refetchInterval: AGAIN_MS,
  });
}

export function useSetpointPlan(house: string) {
  return useQuery({
    queryKey: ['setup', 'setpoints', house],
    queryFn: ({ signal }) => getJson<readonly PlannedSetpoint[]>(at`/houses/${house}/setpoints`, undefined, signal),
  });
}

export function planSetpoint(house: string, mediumC: number | null, from: string): Promise<PlannedSetpoint> {
  return postJson(at`/houses/${house}/setpoints`, { mediumC, from }, newKey());
}

/** The whole line of flags at once, or back again. */
export function judgeFlag(flag: ClimateFlag, override: boolean, reason: string): Promise<unknown> {
  const path = override ? at`/flags/${flag.id ?? ''}/override` : at`/flags/${flag.id ?? ''}/restore`;
  return postJson(path, { reason, until: flag.until }, newKey());
}

/** A batch with what its recipe asks of the house now. */
export interface Lodger {
  readonly batch: BatchView;
  /** Undefined while the recipe is on its way. */
  readonly phase: PhaseRecipe | undefined;
}

/** The batches of houses with the phase each is in. */
export function useLodgers(site: string | undefined, nowMs: number): ReadonlyMap<string, readonly Lodger[]> {
  const batches = useBatchList({ site, state: 'live' }).data?.batches;
  const crops = useMemo(() => [...new Set(batches?.map(({ crop }) => crop))].sort(), [batches]);
  const recipes = useQueries({
    queries: crops.map((crop) => ({
      queryKey: ['setup', 'recipe', crop],
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        getJson<CropRecipe>(at`/crops/${crop}/recipe`, undefined, signal),
      staleTime: Infinity,
    })),
    combine: (results) => results.map(({ data }) => data),
  });
  return useMemo(() => {
    const byCrop = new Map(crops.map((crop, i) => [crop, recipes[i]]));
    const byHouse = new Map<string, Lodger[]>();
    for (const batch of batches ?? []) {
      const recipe = byCrop.get(batch.crop);
      const phase = recipe && phaseOf(batch, recipe, nowMs);
      const lodger = { batch, phase: recipe?.phases.find((each) => each.phase === phase) };
      byHouse.set(batch.house, [...(byHouse.get(batch.house) ?? []), lodger]);
    }
    return byHouse;
  }, [batches, crops, recipes, nowMs]);
}
