import { format } from 'date-fns';

/** The day on the machine's own clock, `YYYY-MM-DD`. */
export function localDate(now: Date): string {
  return format(now, 'yyyy-MM-dd');
}
