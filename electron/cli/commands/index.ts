import type { Command } from '../command';
import { benefitCommand } from './benefit';
import { bidCommand } from './bid';
import { checkCommand } from './check';
import { compareCommand } from './compare';
import { copyCommand } from './copy';
import { demoCommand } from './demo';
import { documentsCommand } from './documents';
import { estimateCommand } from './estimate';
import { fundingCommand } from './funding';
import { importCommand } from './import';
import { newCommand } from './new';
import { reviewCommand } from './review';
import { riskCommand } from './risk';
import { romCommand } from './rom';
import { scheduleCommand } from './schedule';
import { schemaCommand } from './schema';
import { takeBackCommand } from './take-back';
import { uprightCommand } from './upright';
import { whyCommand } from './why';

/** The commands, in the order the help shows them. */
export const COMMANDS: readonly Command[] = [
  estimateCommand,
  scheduleCommand,
  riskCommand,
  whyCommand,
  uprightCommand,
  fundingCommand,
  bidCommand,
  benefitCommand,
  checkCommand,
  reviewCommand,
  compareCommand,
  documentsCommand,
  takeBackCommand,
  copyCommand,
  newCommand,
  importCommand,
  romCommand,
  schemaCommand,
  demoCommand,
];
