import { Refusal } from '../contract/refusal.ts';
import { messageHead, messageTail, type OnixTerms, writeProduct } from '../exchange/onix/write.ts';
import { xmlOut } from '../exchange/onix/xml-out.ts';
import { formatCount } from '../store/onix.ts';
import type { Queries } from './context.ts';
import { changedWorks, houseOf, recordPage } from './onix-records.ts';

/** Formats read at a time: what stands in memory, however large the catalogue. */
const PAGE = 500;

export const onixQueries = {
  'onix.export': ({ db, today, files, step }, { version, tags, scope, content, announcedOnly }) => {
    if (scope.kind === 'work' && !db.one('SELECT 1 FROM work WHERE id = ?', scope.workId))
      throw new Refusal('NOT_FOUND', `There is no work ${scope.workId}.`, 'scope');
    const terms: OnixTerms = { version, tags, content };
    const house = houseOf(db, today);
    const changed = changedWorks(db, scope, today);
    const total = formatCount(db, scope, changed);
    const counts = { products: 0, withoutNumber: 0, unannounced: 0 };
    const name = `onix-${version}-${content === 'full' ? scope.kind : 'registration'}-${today}.xml`;
    const made = files.make(name, (sink) => {
      const out = xmlOut(tags);
      sink.write(messageHead(terms, house));
      for (let after: number | null = 0; after !== null; ) {
        const page = recordPage(db, scope, changed, after, PAGE);
        for (const record of page.records) {
          if (announcedOnly && record.standing === 'planned') {
            counts.unannounced += 1;
            continue;
          }
          writeProduct(out, terms, house, record);
          counts.products += 1;
        }
        sink.write(out.take());
        counts.withoutNumber += page.withoutNumber;
        step(counts.products + counts.withoutNumber + counts.unannounced, total, 'formats written');
        after = page.next;
      }
      sink.write(messageTail(terms, counts.products));
    });
    return { ...made, name, type: 'application/xml', ...counts };
  },
} satisfies Queries<'onix.export'>;
