import type { Command } from '../command';
import { checkCommand } from './check';
import { estimateCommand } from './estimate';
import { romCommand } from './rom';
import { scheduleCommand } from './schedule';

/** The commands, in the order the help shows them. */
export const COMMANDS: readonly Command[] = [estimateCommand, scheduleCommand, checkCommand, romCommand];
