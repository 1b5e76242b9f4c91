import { type Catalogue, FORMAT, move, row } from '../rows.ts';
import type { Plants } from './plant.ts';

const file = (changes: Partial<Catalogue['files'][number]>): Catalogue['files'][number] => ({
  formatId: FORMAT.secondPaper,
  kind: 'interior',
  finalName: 'almanac.pdf',
  checkedName: 'almanac.pdf',
  checkedOn: '2022-05-01',
  open: 0,
  reasoned: 0,
  checks: 1,
  ...changes,
});

/** Faults of final files and their checks. */
export const filePlants: Plants = {
  'final-file-differs': {
    plant: (c) => c.files.push(file({ open: 2, reasoned: 1 })),
    says: 'Paperback: 2 lines of the check of its interior file almanac.pdf differ from the record without',
    about: { formatId: FORMAT.secondPaper },
  },
  'other-file-checked': {
    plant: (c) => c.files.push(file({ checkedName: null, checkedOn: null })),
    says: 'its final interior file almanac.pdf was not checked; another file was.',
    about: { formatId: FORMAT.secondPaper },
  },
  'final-file-not-checked': {
    plant: (c) => {
      const unchecked = { checkedName: null, checkedOn: null, checks: 0 };
      c.files.push(file({ formatId: FORMAT.thirdPaper, ...unchecked }));
      Object.assign(row(c.formats, FORMAT.thirdPaper), {
        publicationDate: '2027-03-02',
        onSaleDate: '2027-03-02',
      });
      move(c, 311, [['sent', '2026-11-24']], 'committed');
    },
    says: 'is to be cleared, and its interior file almanac.pdf was never checked.',
    about: { formatId: FORMAT.thirdPaper },
  },
  'final-file-differs-with-reason': {
    plant: (c) => c.files.push(file({ reasoned: 1 })),
    says: '1 line of the check of its interior file almanac.pdf differs from the record, accepted',
    about: { formatId: FORMAT.secondPaper },
  },
};
