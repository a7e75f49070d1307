import type { Finding } from '../../core/base';

/** Wrong use of the command line: exit 2, with what would be right. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** A command that was asked to stop, by Ctrl-C: it says so and ends with the exit code that shells know. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
}

/** The exit code of a command stopped by Ctrl-C: 128 and the number of the signal. */
export const STOPPED = 130;

/** What a command gives back: the JSON object, the lines for people, and the findings. */
export interface Outcome {
  readonly json: object;
  readonly lines: readonly string[];
  readonly findings: readonly Finding[];
}

export interface OptionSpec {
  readonly type: 'string' | 'boolean';
  readonly words: string;
  readonly sample?: string;
}

/** What a command gets: its positional arguments, its options, and today's date. */
export interface Call {
  readonly files: readonly string[];
  readonly option: (name: string) => string | undefined;
  readonly flag: (name: string) => boolean;
  /** The date given with --today, if any. */
  readonly today: string | undefined;
  /** The machine's date, used when the document has no status date. */
  readonly machineDate: string;
}

export interface Command {
  readonly name: string;
  readonly words: string;
  readonly usage: string;
  readonly options: Readonly<Record<string, OptionSpec>>;
  /** Text after the options, made when asked for. */
  readonly more?: () => string;
  readonly run: (call: Call) => Outcome | Promise<Outcome>;
}
