import type { QueryName } from '../contract/index.ts';
import { auditQueries } from './audit.ts';
import { barcodeQueries } from './barcodes.ts';
import { blockQueries } from './blocks.ts';
import { catalogueQueries } from './catalogue.ts';
import { channelQueries } from './channels.ts';
import type { QueryHandler } from './context.ts';
import { costQueries } from './costs.ts';
import { coverQueries } from './covers.ts';
import { editionAdviceQueries } from './edition-advice.ts';
import { exportQueries } from './exports.ts';
import { formatListQueries } from './format-list.ts';
import { journalQueries } from './journal.ts';
import { listingListQueries } from './listing-list.ts';
import { lockQueries } from './locks.ts';
import { moneyQueries } from './money.ts';
import { numberQueries } from './numbers.ts';
import { onixPreviewQueries } from './onix-preview.ts';
import { ownedListQueries } from './owned-list.ts';
import { pictureQueries } from './pictures.ts';
import { planQueries } from './plans.ts';
import { printCostQueries } from './print-costs.ts';
import { proofCheckQueries } from './proof-checks.ts';
import { proofCompareQueries } from './proof-compare.ts';
import { rangeQueries } from './ranges.ts';
import { readinessQueries } from './readiness.ts';
import { reportQueries } from './reports.ts';
import { requestQueries } from './requests.ts';
import { retirementQueries } from './retirement.ts';
import { searchQueries } from './search.ts';
import { settingQueries } from './settings.ts';
import { sheetQueries } from './sheets.ts';
import { submissionQueries } from './submissions.ts';
import { taskQueries } from './tasks.ts';
import { templateQueries } from './templates.ts';
import { workQueries } from './works.ts';

/** Every query by its name. */
export const queries: { [N in QueryName]: QueryHandler<N> } = {
  ...auditQueries,
  ...barcodeQueries,
  ...blockQueries,
  ...catalogueQueries,
  ...channelQueries,
  ...exportQueries,
  ...costQueries,
  ...coverQueries,
  ...editionAdviceQueries,
  ...formatListQueries,
  ...journalQueries,
  ...listingListQueries,
  ...lockQueries,
  ...numberQueries,
  ...onixPreviewQueries,
  ...ownedListQueries,
  ...pictureQueries,
  ...planQueries,
  ...moneyQueries,
  ...printCostQueries,
  ...rangeQueries,
  ...readinessQueries,
  ...proofCheckQueries,
  ...proofCompareQueries,
  ...reportQueries,
  ...requestQueries,
  ...searchQueries,
  ...retirementQueries,
  ...settingQueries,
  ...submissionQueries,
  ...taskQueries,
  ...templateQueries,
  ...sheetQueries,
  ...workQueries,
};
