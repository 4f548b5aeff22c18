import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { Crop, House, SeededCrop, Site, TrayFormat, Variety } from './api-types';
import { answer, api } from './http';
import { keys } from './query-keys';

/**
 * The lists that every screen names things from. They change seldom, so one copy is kept and the live stream's
 * `setup` event renews it, with all else of the group `setup`.
 */
export const useSites = () => useList<Site>('sites', (signal) => answer(api.GET('/api/sites', { signal })));
export const useHouses = () => useList<House>('houses', (signal) => answer(api.GET('/api/houses', { signal })));
export const useTrayFormats = () =>
  useList<TrayFormat>('tray-formats', (signal) => answer(api.GET('/api/tray-formats', { signal })));
export const useCrops = () => useList<Crop>('crops', (signal) => answer(api.GET('/api/crops', { signal })));
export const useVarieties = (enabled = true) =>
  useList<Variety>('varieties', (signal) => answer(api.GET('/api/varieties', { signal })), enabled);

/** Profiles that come with the application; which of them are taken changes with the crops. */
export const useSeededCrops = () =>
  useList<SeededCrop>('seeded-crops', (signal) => answer(api.GET('/api/seeded-crops', { signal })));

function useList<T>(name: string, ask: (signal: AbortSignal) => Promise<readonly T[]>, enabled = true) {
  return useQuery({
    queryKey: keys.setupList(name),
    queryFn: ({ signal }) => ask(signal),
    staleTime: Infinity,
    enabled,
  });
}

/** What people call the houses, by code; the same map as long as no house changes. */
export function useHouseNames(): ReadonlyMap<string, string> {
  const houses = useHouses().data;
  return useMemo(() => new Map(houses?.map(({ code, name }) => [code, name])), [houses]);
}
