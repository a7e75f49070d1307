import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** The widest that a picture is drawn on paper, in CSS pixels: letter across, less its margins. */
export const PAPER_WIDTH = 940;

/** Whether the page is being printed: tables then show all their rows, and pictures keep to the width of the paper. */
export function useIsPrinting(): boolean {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    const medium = window.matchMedia('print');
    const start = () => flushSync(() => setPrinting(true));
    const end = () => setPrinting(false);
    const turn = () => (medium.matches ? start() : end());
    window.addEventListener('beforeprint', start);
    window.addEventListener('afterprint', end);
    medium.addEventListener('change', turn);
    return () => {
      window.removeEventListener('beforeprint', start);
      window.removeEventListener('afterprint', end);
      medium.removeEventListener('change', turn);
    };
  }, []);
  return isPrinting;
}
