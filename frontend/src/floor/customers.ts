import { useQueries } from '@tanstack/react-query';
import type { EntryView } from '../shared/api-types';
import { answer, api } from '../shared/http';
import { keys } from '../shared/query-keys';

/** Who the trays of these entries left for. An order that this person may not see stays unnamed. */
export function useCustomers(entries: readonly Pick<EntryView, 'order'>[]): (order: string) => string | undefined {
  const orders = [...new Set(entries.flatMap(({ order }) => order ?? []))];
  const found = useQueries({
    queries: orders.map((id) => ({
      queryKey: keys.oneOrder(id),
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        answer(api.GET('/api/orders/{id}', { params: { path: { id } }, signal })),
      retry: false,
    })),
  });
  return (order) => found[orders.indexOf(order)]?.data?.customer;
}
