import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useLayoutEffect, useState, type RefObject } from 'react';
import type { Row } from '../../../core/views';
import { useIsPrinting } from '../printing';

/** Up to this many rows all are kept in the page; beyond it only those near the view. */
const ALL = 150;

export interface ShownRows {
  readonly rows: readonly { readonly row: Row; readonly index: number }[];
  readonly before: number;
  readonly after: number;
}

/** The rows to keep in the page, with the room that those before and after take. */
export function useShownRows(
  rows: readonly Row[],
  body: RefObject<HTMLElement | null>,
  focused: number,
): ShownRows {
  const [scroller, setScroller] = useState<HTMLElement | null>(null);
  useEffect(() => setScroller(body.current?.closest<HTMLElement>('.surface') ?? null), [body]);
  const isPrinting = useIsPrinting();
  const isLong = rows.length > ALL && !isPrinting;
  const above = useAbove(scroller, body, isLong);
  const virtual = useVirtualizer({
    scrollMargin: above,
    count: isLong ? rows.length : 0,
    getScrollElement: () => scroller,
    estimateSize: () => 24,
    overscan: 30,
  });
  useEffect(() => {
    if (isLong) virtual.scrollToIndex(focused);
  }, [focused, isLong, virtual]);
  if (!isLong) return { rows: rows.map((row, index) => ({ row, index })), before: 0, after: 0 };
  const items = virtual.getVirtualItems();
  return {
    rows: items.flatMap(item => {
      const row = rows[item.index];
      return row === undefined ? [] : [{ row, index: item.index }];
    }),
    before: (items[0]?.start ?? above) - above,
    after: virtual.getTotalSize() - ((items.at(-1)?.end ?? above) - above),
  };
}

/** How much stands above the rows in what is scrolled: it grows and shrinks with what a view tells there. */
function useAbove(
  scroller: HTMLElement | null,
  body: RefObject<HTMLElement | null>,
  isLong: boolean,
): number {
  const [above, setAbove] = useState(0);
  useLayoutEffect(() => {
    const rows = body.current?.querySelector('tbody') ?? body.current;
    if (!isLong || scroller === null || rows === null) return;
    const top = rows.getBoundingClientRect().top - scroller.getBoundingClientRect().top;
    const now = top + scroller.scrollTop;
    if (Math.abs(now - above) > 1) setAbove(now);
  });
  return above;
}
