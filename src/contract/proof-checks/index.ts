import { checkPictures, giveReason, listChecks, readProofFile, recordCheck, showCheck } from './checks.ts';
import { comparableChecks, compareChecks } from './compare.ts';

/** The operations of the check of final files. */
export const proofCheckOperations = [
  readProofFile,
  recordCheck,
  listChecks,
  showCheck,
  checkPictures,
  giveReason,
  comparableChecks,
  compareChecks,
] as const;
