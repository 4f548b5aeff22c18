import { useQuery } from '@tanstack/react-query';
import type { Crop, House, Site, TrayFormat, Variety } from './api-types';
import { at, getJson } from './http';
import { keys } from './query-keys';

/**
 * The lists that every screen names things from. They change seldom, so one copy is kept and the live stream's
 * `setup` event renews it, with all else of the group `setup`.
 */
export const useSites = () => useList<Site>('sites', at`/sites`);
export const useHouses = () => useList<House>('houses', at`/houses`);
export const useTrayFormats = () => useList<TrayFormat>('tray-formats', at`/tray-formats`);
export const useCrops = () => useList<Crop>('crops', at`/crops`);
export const useVarieties = () => useList<Variety>('varieties', at`/varieties`);

function useList<T>(name: string, path: string) {
  return useQuery({
    queryKey: keys.setupList(name),
    queryFn: ({ signal }) => getJson<readonly T[]>(path, undefined, signal),
    staleTime: Infinity,
  });
}
