import { keepPreviousData, useQuery, useQueryClient, type UseQueryResult } from '@tanstack/react-query';
import { useEffect } from 'react';
import { liveStream, useLiveEvent } from '../shared/live-stream';
import { keys } from '../shared/query-keys';
import { loadBoard, type BoardRequest } from './board-api';
import { applyBoardEvent, boardFrom, type BoardEvent, type BoardState } from './board-state';

/**
 * The board asked for, kept true by the stream. After each load the stream follows from that load's position, so that
 * nothing falls between the two.
 */
export function useLiveBoard(request: BoardRequest): UseQueryResult<BoardState> {
  const queries = useQueryClient();
  const queryKey = keys.boardRows(request);
  const query = useQuery({
    queryKey,
    queryFn: async ({ signal }) => boardFrom(await loadBoard(request, signal)),
    // A board that nobody looked at was not kept up by the stream.
    staleTime: 0,
    structuralSharing: false,
    placeholderData: keepPreviousData,
  });

  const live = request.asOf === undefined;
  const apply = (event: BoardEvent) =>
    live &&
    queries.setQueryData<BoardState>(queryKey, (state) => state && applyBoardEvent(state, event, request, Date.now()));
  useLiveEvent('board', (event) => apply({ kind: 'board', ...event }));
  useLiveEvent('removed', (event) => apply({ kind: 'removed', ...event }));
  useLiveEvent('snapshot', (event) => apply({ kind: 'snapshot', ...event }));

  const loaded = query.isPlaceholderData ? undefined : query.data?.loaded;
  const loadedPosition = query.data?.position;
  const { weeks, confidence } = request;
  const from = request.from ?? query.data?.weeks[0]?.week;
  useEffect(() => {
    // What was does not change; the stream goes on telling the connection.
    if (!live || loaded === undefined || loadedPosition === undefined) return;
    liveStream.showBoard({ ...(from === undefined ? {} : { from }), weeks, confidence }, loadedPosition);
    // Only a fresh load moves the stream; the position itself grows with every event.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [loaded]);
  return query;
}
