import type { Finding } from '../../base';

/** A schedule that breaks a rule of its own problem. */
export function wrong(code: string, place: string, message: string): Finding {
  return {
    code: `verify/${code}`,
    weight: 'blocks',
    place,
    message,
    meaning: 'The schedule breaks a rule it was to keep, and is not shown.',
    remedy: 'Report it: the program made a mistake.',
  };
}
