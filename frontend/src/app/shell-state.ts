/** Rooms that look for things in a box of their own: a second one would only be in its way on a phone. */
export const OWN_SEARCH: ReadonlySet<string> = new Set(['board', 'floor', 'batches']);

/** Up to here the side menu lies over the screen. */
const PHONE_PX = 800;

/** The board with eight weeks beside the menu. */
const BOARD_PX = 1280;

/** Whether the names of the rooms stand beside the screen without being asked for. */
export function menuStaysOpen(room: string, widthPx: number): boolean {
  return widthPx > (room === 'board' ? BOARD_PX : PHONE_PX);
}
