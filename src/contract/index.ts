import type { z } from 'zod';
import {
  acceptFinding,
  auditAgain,
  auditProgress,
  auditReport,
  auditRules,
  auditText,
  countFindings,
  reopenFinding,
  runAudit,
} from './audit.ts';
import { listBackups, makeBackup, previewBackup, restoreBackup } from './backups.ts';
import { drawBarcode } from './barcodes.ts';
import {
  addBlock,
  bandsOfBlock,
  importOwnedList,
  listBlocks,
  readOwnedList,
  runwayOfBlocks,
  updateBlock,
} from './blocks.ts';
import { changeMany } from './bulk.ts';
import { catalogueInfo, catalogueStatus, checkCatalogue, loadDemo } from './catalogue.ts';
import { mergeChanges } from './changes.ts';
import { createChannel, listChannels, removeChannel, updateChannel } from './channels.ts';
import { addCost, editionCosts, removeCost, updateCost } from './costs.ts';
import { drawCover, listPapers } from './covers.ts';
import { adviceRules, adviseEdition, keptAdvice, noteAdvice } from './edition-advice.ts';
import {
  correctEdition,
  createEdition,
  linkEdition,
  prepareNextEdition,
  removeEdition,
  updateEdition,
} from './editions.ts';
import { makeExport } from './exports.ts';
import { dropFile, getFile, putFile } from './files.ts';
import { recordFormatFile, withdrawFormatFile } from './format-files.ts';
import {
  findFormats,
  formatChoices,
  listFilters,
  readFormatRows,
  removeFilter,
  saveFilter,
} from './format-list.ts';
import { cancelFormat, copyFormat, createFormat, removeFormat, updateFormat } from './formats.ts';
import { checkIsbns } from './isbns.ts';
import { listJournal, readJournalRows, undoChange } from './journal.ts';
import { findListings } from './listing-list.ts';
import { createListing, listingRequest, moveListing, removeListing, updateListing } from './listings.ts';
import { lockRules } from './locks.ts';
import { changePrices, compareMoney, editionMoney, previewPrices } from './money.ts';
import {
  assignEdition,
  assignNumber,
  listNumbers,
  releaseNumber,
  reserveNumbers,
  spendNumber,
} from './numbers.ts';
import { importOnix, previewOnix } from './onix.ts';
import { coverageGrid, lifeOfWork, moneyByChannel, numbersLeft } from './pictures.ts';
import { latePlans, leadTimes, previewRelease, previewSlip, slipPlan } from './plan-previews.ts';
import { dropPlan, planRelease, planRetirement, redatePlan } from './plans.ts';
import { addCard, fitQuotes, listCards, removeCard, updateCard } from './print-costs.ts';
import { programLog } from './program.ts';
import { proofCheckOperations } from './proof-checks/index.ts';
import { listProofs, recordProof } from './proofs.ts';
import { getRanges, loadRanges } from './ranges.ts';
import { copyrightPage, editionReadiness } from './readiness.ts';
import { listReports, lookAtReport, makeReportTask, previewReport, reconcileReport } from './reports.ts';
import {
  askRemoval,
  chaseRemoval,
  confirmGone,
  countStock,
  getDesk,
  outOfPrint,
  promiseRemoval,
  setReturns,
} from './retirement.ts';
import { findRecords } from './search.ts';
import { getSettings, updateSettings } from './settings.ts';
import { importSheet, lookAtSheet } from './sheets.ts';
import { getSheet, recordSubmission } from './submissions.ts';
import { createTask, dropTask, finishTask, listTasks, redateTask, taskCalendar, waitTask } from './tasks.ts';
import {
  listTexts,
  planVersions,
  putBackPlan,
  putBackText,
  savePlan,
  saveText,
  textVersions,
} from './templates.ts';
import { importCatalogue } from './whole.ts';
import { createWork, getWork, listWorks, removeWork, updateWork } from './works.ts';

const all = [
  catalogueInfo,
  catalogueStatus,
  loadDemo,
  checkCatalogue,
  checkIsbns,
  drawBarcode,
  drawCover,
  listPapers,
  addBlock,
  updateBlock,
  listBlocks,
  bandsOfBlock,
  readOwnedList,
  importOwnedList,
  runwayOfBlocks,
  listNumbers,
  reserveNumbers,
  releaseNumber,
  assignNumber,
  assignEdition,
  spendNumber,
  listWorks,
  getWork,
  createWork,
  updateWork,
  removeWork,
  correctEdition,
  createEdition,
  updateEdition,
  removeEdition,
  prepareNextEdition,
  lockRules,
  adviceRules,
  adviseEdition,
  noteAdvice,
  keptAdvice,
  linkEdition,
  editionReadiness,
  copyrightPage,
  createFormat,
  copyFormat,
  updateFormat,
  cancelFormat,
  removeFormat,
  recordFormatFile,
  withdrawFormatFile,
  listChannels,
  createChannel,
  updateChannel,
  removeChannel,
  createListing,
  updateListing,
  removeListing,
  moveListing,
  listingRequest,
  findListings,
  getSheet,
  recordSubmission,
  listProofs,
  recordProof,
  ...proofCheckOperations,
  editionCosts,
  addCost,
  updateCost,
  removeCost,
  editionMoney,
  compareMoney,
  previewPrices,
  changePrices,
  listCards,
  fitQuotes,
  addCard,
  updateCard,
  removeCard,
  getDesk,
  askRemoval,
  promiseRemoval,
  chaseRemoval,
  confirmGone,
  setReturns,
  countStock,
  outOfPrint,
  planRelease,
  planRetirement,
  redatePlan,
  dropPlan,
  leadTimes,
  previewRelease,
  previewSlip,
  slipPlan,
  latePlans,
  listTasks,
  taskCalendar,
  createTask,
  finishTask,
  waitTask,
  redateTask,
  dropTask,
  listTexts,
  textVersions,
  saveText,
  putBackText,
  planVersions,
  savePlan,
  putBackPlan,
  runAudit,
  auditText,
  lifeOfWork,
  coverageGrid,
  numbersLeft,
  moneyByChannel,
  auditRules,
  countFindings,
  auditReport,
  auditAgain,
  auditProgress,
  acceptFinding,
  reopenFinding,
  listBackups,
  makeBackup,
  previewBackup,
  restoreBackup,
  makeExport,
  lookAtSheet,
  importSheet,
  lookAtReport,
  previewReport,
  reconcileReport,
  listReports,
  makeReportTask,
  importCatalogue,
  mergeChanges,
  putFile,
  getFile,
  dropFile,
  programLog,
  listJournal,
  readJournalRows,
  undoChange,
  previewOnix,
  importOnix,
  getRanges,
  loadRanges,
  getSettings,
  updateSettings,
  findRecords,
  findFormats,
  readFormatRows,
  formatChoices,
  changeMany,
  listFilters,
  saveFilter,
  removeFilter,
] as const;

type Declared = (typeof all)[number];
export type OperationName = Declared['name'];
export type OperationNamed<N extends OperationName> = Extract<Declared, { name: N }>;
/** What a caller passes; fields with defaults may be left out. */
export type InputOf<N extends OperationName> = z.input<OperationNamed<N>['input']>;
/** What a handler receives after parsing. */
export type ParsedInputOf<N extends OperationName> = z.output<OperationNamed<N>['input']>;
export type OutputOf<N extends OperationName> = z.output<OperationNamed<N>['output']>;
/** Names of the operations that only read. */
export type QueryName = Extract<Declared, { kind: 'query' }>['name'];
export type CommandName = Extract<Declared, { kind: 'command' }>['name'];
/** Names of the operations that work on files beside the catalogue. */
export type ErrandName = Extract<Declared, { kind: 'errand' }>['name'];
/** Names of the operations that read a user's file in a thread of their own; their answers come later. */
export type ReadingName = Extract<Declared, { kind: 'reading' }>['name'];

/** Every operation by its name. */
export const operations = Object.fromEntries(all.map((entry) => [entry.name, entry])) as {
  [N in OperationName]: OperationNamed<N>;
};

/** Whether a text names an operation. */
export function isOperationName(name: string): name is OperationName {
  return Object.hasOwn(operations, name);
}

/** Whether a text names an operation whose answer comes later. */
export function isReadingName(name: string): name is ReadingName {
  return isOperationName(name) && operations[name].kind === 'reading';
}
