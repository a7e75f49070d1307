import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron';
import type { Host, OpenedDocument } from './channels';

const host: Host = {
  about: () => ipcRenderer.invoke('about', {}),
  readSettings: () => ipcRenderer.invoke('read-settings', {}),
  writeSettings: settings => ipcRenderer.invoke('write-settings', settings),
  openedAtStart: () => ipcRenderer.invoke('opened-at-start', {}),
  openDocument: () => ipcRenderer.invoke('open-document', {}),
  openListed: request => ipcRenderer.invoke('open-listed', request),
  recentDocuments: () => ipcRenderer.invoke('recent-documents', {}),
  clearRecent: () => ipcRenderer.invoke('clear-recent', {}),
  readSample: request => ipcRenderer.invoke('read-sample', request),
  saveDocument: request => ipcRenderer.invoke('save-document', request),
  saveDocumentAs: request => ipcRenderer.invoke('save-document-as', request),
  takeOver: request => ipcRenderer.invoke('take-over', request),
  closeDocument: request => ipcRenderer.invoke('close-document', request),
  writeRecovery: request => ipcRenderer.invoke('write-recovery', request),
  discardRecovery: request => ipcRenderer.invoke('discard-recovery', request),
  listRecovery: () => ipcRenderer.invoke('list-recovery', {}),
  readRecovery: request => ipcRenderer.invoke('read-recovery', request),
  makePapers: request => ipcRenderer.invoke('make-papers', request),
  readPaper: request => ipcRenderer.invoke('read-paper', request),
  readTable: request => ipcRenderer.invoke('read-table', request),
  takeBack: request => ipcRenderer.invoke('take-back', request),
  markEdited: request => ipcRenderer.invoke('mark-edited', request),
  onCommand: listener => {
    const wrapped = (_event: IpcRendererEvent, command: string) => listener(command);
    ipcRenderer.on('command', wrapped);
    return () => ipcRenderer.off('command', wrapped);
  },
  onOpened: listener => {
    const wrapped = (_event: IpcRendererEvent, document: OpenedDocument) => listener(document);
    ipcRenderer.on('opened', wrapped);
    return () => ipcRenderer.off('opened', wrapped);
  },
};

contextBridge.exposeInMainWorld('host', Object.freeze(host));
