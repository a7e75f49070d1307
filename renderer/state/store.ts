import { create } from 'zustand';
import {
  DEFAULT_SETTINGS,
  type About,
  type ListedDocument,
  type Problem,
  type Settings,
} from '../../electron/channels';
import type { Finding } from '../../core/base';
import type { OpenedName, OpenedRows, WhyRows } from '../../core/views';
import type { ShownRows } from '../engine/protocol';
import type { RunFound } from '../engine/study-protocol';
import type { ViewId } from '../frame/view-table';
import type { History } from './history';

/** The open document: its place in the host's words, and its name. */
export interface OpenDocument {
  readonly id: string;
  readonly name: string;
  readonly readOnly: boolean;
  /** Key of its recovery copy. */
  readonly key: string;
}

/** A notice that stays until it is dealt with. */
export interface Notice {
  readonly id: string;
  readonly head: string;
  readonly words: string;
  readonly actions: readonly { readonly title: string; readonly run: () => void }[];
  /** The findings that withheld something as it came up, see `blockingOf`: it goes once one of them is mended. */
  readonly whileBlocked?: readonly string[];
}

export type Panel =
  'none' | 'menu' | 'find' | 'help' | 'open' | 'save-as' | 'close' | 'start' | 'scenarios' | 'import';

export interface Working {
  readonly words: string;
  readonly done: number;
  readonly of: number;
}

export interface WindowState {
  readonly about: About | undefined;
  readonly settings: Settings;
  readonly document: OpenDocument | undefined;
  readonly history: History | undefined;
  readonly scenario: string;
  /** What the last run of each scenario left, by document and scenario. */
  readonly runs: Readonly<Record<string, RunFound>>;
  readonly view: ViewId;
  readonly rows: ShownRows | undefined;
  /** Rows of the views that are made when they are opened. */
  readonly opened: Partial<OpenedRows>;
  /** Those of them that are of the last evaluation; what the others say is of an earlier one. */
  readonly ofLast: readonly OpenedName[];
  /** Those of them that are looked at: they come along with every evaluation. */
  readonly lookedAt: readonly OpenedName[];
  /** How the last edit moved the bottom line, by cell; shown for some seconds, kept for the tooltip. */
  readonly changes: Readonly<Record<string, string>>;
  readonly areChangesFresh: boolean;
  readonly isBehind: boolean;
  readonly working: Working | undefined;
  readonly fault: string | undefined;
  readonly why: readonly WhyRows[];
  readonly chosen: string | undefined;
  readonly status: string;
  readonly notices: readonly Notice[];
  readonly panel: Panel;
  /** Whether edits of what all scenarios share are kept in the chosen one alone. */
  readonly onlyHere: boolean;
  readonly among: readonly ListedDocument[];
  readonly problem: Problem | undefined;
  readonly openFindings: readonly Finding[];
}

export const EMPTY_STATE: WindowState = {
  about: undefined,
  settings: DEFAULT_SETTINGS,
  document: undefined,
  history: undefined,
  scenario: '',
  runs: {},
  view: 'vessel',
  rows: undefined,
  opened: {},
  ofLast: [],
  lookedAt: [],
  changes: {},
  areChangesFresh: false,
  isBehind: false,
  working: undefined,
  fault: undefined,
  why: [],
  chosen: undefined,
  status: '',
  notices: [],
  panel: 'none',
  onlyHere: false,
  among: [],
  problem: undefined,
  openFindings: [],
};

/** What the window holds. Only the actions beside this file change it. */
export const useWindow = create<WindowState>(() => EMPTY_STATE);

export function state(): WindowState {
  return useWindow.getState();
}

export function change(part: Partial<WindowState>): void {
  useWindow.setState(part);
}
