import path from 'node:path';
import * as electron from 'electron';
import { runMain } from './main';
import { version } from '../package.json';

void runMain(electron, { dist: path.join(__dirname, '..'), version, arguments: process.argv });
