import type { Finding } from '../../base';

/** A finding that keeps a schedule from being made. */
export function fault(code: string, place: string, message: string, remedy: string): Finding {
  return {
    code: `schedule/${code.replaceAll(' ', '-')}`,
    weight: 'blocks',
    place,
    message,
    meaning: 'No schedule is made.',
    remedy,
  };
}

/** A date text that is not a date. */
export function notADate(place: string, text: string): Finding {
  return fault('date', place, `"${text}" is not a date.`, 'Write it as YYYY-MM-DD.');
}

/** A name that leads nowhere. */
export function unknown(kind: string, id: string, place: string): Finding {
  return fault(
    `unknown-${kind}`,
    place,
    `There is no ${kind} "${id}".`,
    `Name a ${kind} of the project, or take it out.`,
  );
}
