import path from 'node:path';
import * as electron from 'electron';
import { localDate } from './local-date';
import { runMain } from './main';
import { paperMaker } from './paper-maker';
import { version } from '../package.json';

void runMain(electron, {
  dist: path.join(__dirname, '..'),
  version,
  tableReader: path.join(__dirname, 'table-reader.cjs'),
  paperReader: path.join(__dirname, 'paper-reader.cjs'),
  arguments: process.argv,
  papers: paperMaker(() => localDate(new Date())),
});
