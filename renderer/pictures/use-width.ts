import { useLayoutEffect, useRef, useState, type RefObject } from 'react';
import { PAPER_WIDTH, useIsPrinting } from '../parts/printing';

/** The width a picture has, so that it is drawn at its size and its text is never scaled. */
export function useWidth<T extends HTMLElement>(first: number): { ref: RefObject<T | null>; width: number } {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(entries => {
      const seen = entries[0]?.contentRect.width;
      if (seen !== undefined && seen > 0) setWidth(Math.floor(seen));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const isPrinting = useIsPrinting();
  return { ref, width: isPrinting ? Math.min(width, PAPER_WIDTH) : width };
}
