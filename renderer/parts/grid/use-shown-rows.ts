import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useState, type RefObject } from 'react';
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
  const virtual = useVirtualizer({
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
    before: items[0]?.start ?? 0,
    after: virtual.getTotalSize() - (items.at(-1)?.end ?? 0),
  };
}
