import { useQuery } from '@tanstack/react-query';
import type { Crop, House, Site, TrayFormat, Variety } from './api-types';
import { at, getJson } from './http';

/**
 * The lists that every screen names things from. They change seldom, so one copy is kept and the live stream's
 * `setup` event renews it. Query keys begin with the capability, so `['setup']` reaches them all.
 */
export const useSites = () => useList<Site>('sites', at`/sites`);
export const useHouses = () => useList<House>('houses', at`/houses`);
export const useTrayFormats = () => useList<TrayFormat>('tray-formats', at`/tray-formats`);
export const useCrops = () => useList<Crop>('crops', at`/crops`);
export const useVarieties = () => useList<Variety>('varieties', at`/varieties`);

function useList<T>(name: string, path: string) {
  return useQuery({
    queryKey: ['setup', name],
    queryFn: ({ signal }) => getJson<readonly T[]>(path, undefined, signal),
    staleTime: Infinity,
  });
}
