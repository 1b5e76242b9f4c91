import type { CommandName } from '../contract/index.ts';
import { acceptanceCommands } from './acceptances.ts';
import { blockCommands } from './blocks.ts';
import { bulkCommands } from './bulk.ts';
import { changesCommands } from './changes.ts';
import { channelCommands } from './channels.ts';
import type { CommandHandler } from './context.ts';
import { costCommands } from './costs.ts';
import { demoCommands } from './demo.ts';
import { editionAdviceCommands } from './edition-advice.ts';
import { editionLinkCommands } from './edition-links.ts';
import { editionCommands } from './editions.ts';
import { formatFileCommands } from './format-files.ts';
import { formatCommands } from './formats.ts';
import { listingCommands } from './listings.ts';
import { nextEditionCommands } from './next-edition.ts';
import { numberCommands } from './numbers.ts';
import { onixCommands } from './onix.ts';
import { ownedListCommands } from './owned-list.ts';
import { planCommands } from './plans.ts';
import { priceCommands } from './prices.ts';
import { printCostCommands } from './print-costs.ts';
import { proofCheckCommands } from './proof-checks.ts';
import { proofCommands } from './proofs.ts';
import { rangeCommands } from './ranges.ts';
import { reportCommands } from './reports.ts';
import { retirementCommands } from './retirement.ts';
import { savedFilterCommands } from './saved-filters.ts';
import { settingCommands } from './settings.ts';
import { sheetCommands } from './sheets.ts';
import { submissionCommands } from './submissions.ts';
import { taskCommands } from './tasks.ts';
import { templateCommands } from './templates.ts';
import { undoCommands } from './undo.ts';
import { wholeCommands } from './whole.ts';
import { workCommands } from './works.ts';

/** Every command by its name. */
export const commands: { [N in CommandName]: CommandHandler<N> } = {
  ...acceptanceCommands,
  ...blockCommands,
  ...bulkCommands,
  ...channelCommands,
  ...costCommands,
  ...demoCommands,
  ...editionAdviceCommands,
  ...editionCommands,
  ...formatFileCommands,
  ...editionLinkCommands,
  ...formatCommands,
  ...listingCommands,
  ...nextEditionCommands,
  ...numberCommands,
  ...ownedListCommands,
  ...onixCommands,
  ...planCommands,
  ...priceCommands,
  ...printCostCommands,
  ...proofCheckCommands,
  ...proofCommands,
  ...rangeCommands,
  ...reportCommands,
  ...retirementCommands,
  ...savedFilterCommands,
  ...settingCommands,
  ...submissionCommands,
  ...sheetCommands,
  ...taskCommands,
  ...templateCommands,
  ...undoCommands,
  ...wholeCommands,
  ...changesCommands,
  ...workCommands,
};
