import { all, type Element, parts, text } from './element.ts';
import { readCollateral, readPublishing, readRelated } from './read-blocks.ts';
import { readExtents, readForm, readMeasures } from './read-form.ts';
import { isbnIn, readHead, readIsbn } from './read-identity.ts';
import { keep, type Reading } from './read-product.ts';
import { readAudience, readLanguage, readSubjects } from './read-subjects.ts';
import { readSupply } from './read-supply.ts';
import { readContributors, readEdition, readSeries, readTitle } from './read-titles.ts';

/** Parts of block 1 that the readers have taken or kept, or that only say that something is not there. */
const TAKEN = new Set(
  'ProductForm ProductFormDetail Measure NoCollection Collection TitleDetail Contributor NoContributor EditionType EditionNumber EditionStatement NoEdition Language Extent Subject AudienceCode Audience AudienceRange'.split(
    ' ',
  ),
);

/** Block 1. */
function readDescriptive(to: Reading, block: Element): void {
  readForm(to, block);
  readMeasures(to, block);
  readSeries(to, block);
  readTitle(to, block);
  readContributors(to, block);
  readEdition(to, block);
  readLanguage(to, block);
  readExtents(to, block);
  readSubjects(to, block);
  readAudience(to, block);
  for (const element of parts(block)) {
    if (TAKEN.has(element.name)) continue;
    const plain = element.name === 'ProductComposition' && text(block, 'ProductComposition') === '00';
    if (!plain) keep(to, 'DescriptiveDetail', element);
  }
}

/** Reads a product of ONIX 3.0 or 3.1. A block that is not there tells nothing, as in a partial update. */
export function readProduct3(to: Reading, product: Element): void {
  const { product: read } = to;
  read.notification = text(product, 'NotificationType');
  readIsbn(to, isbnIn(product));
  for (const element of parts(product)) {
    switch (element.name) {
      case 'DescriptiveDetail':
        readDescriptive(to, element);
        break;
      case 'CollateralDetail':
        readCollateral(to, element);
        break;
      case 'PublishingDetail':
        readPublishing(to, element);
        break;
      case 'RelatedMaterial':
        readRelated(to, element);
        break;
      case 'ProductSupply':
        break;
      default:
        readHead(to, element);
    }
  }
  const supplies = all(product, 'ProductSupply');
  if (supplies.length > 0) readSupply(to, supplies);
}
