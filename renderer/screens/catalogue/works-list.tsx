import type { KeyboardEvent } from 'react';
import { Link } from 'wouter';
import type { FormatStanding } from '../../../src/contract/terms.ts';
import { Isbn, Standing } from '../../ui/index.ts';
import { byEdition, counted, type FormatRow, shortEdition, type WorkRow } from './words.ts';

/** Up and down move between the works. */
function onListKey(event: KeyboardEvent<HTMLUListElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const openers = [...event.currentTarget.querySelectorAll<HTMLElement>('.work-opener')];
  const { target } = event;
  const index = target instanceof HTMLElement ? openers.indexOf(target) : -1;
  if (index < 0) return;
  event.preventDefault();
  openers[index + (event.key === 'ArrowDown' ? 1 : -1)]?.focus();
}

function FormatLine({ format }: { format: FormatRow }) {
  return (
    <li className="format-line">
      <Standing of="format" value={format.standing} />
      <span>{format.name}</span>
      <span className="format-line-isbn">
        {format.hyphenated === null ? (
          <span className="soft">no number yet</span>
        ) : (
          <Isbn value={format.hyphenated} />
        )}
      </span>
    </li>
  );
}

function EditionLines({ work, formats }: { work: WorkRow; formats: FormatRow[] }) {
  const [first] = formats;
  const label = first ? shortEdition(work, first) : '';
  return (
    <div className="edition-lines">
      <p className="edition-lines-label">{label}</p>
      <ul>
        {formats.map((format) => (
          <FormatLine key={format.id} format={format} />
        ))}
      </ul>
    </div>
  );
}

function WorkEntry({ work, only }: { work: WorkRow; only: FormatStanding | '' }) {
  const shown = work.formats.filter((format) => only === '' || format.standing === only);
  const others = work.formats.length - shown.length;
  return (
    <li className="work-entry">
      <div className="work-entry-head">
        <Link href={`/work/${work.id}`} className="work-opener title">
          {work.title}
        </Link>
        <p className="soft">{work.contributors}</p>
      </div>
      <div className="work-entry-formats">
        {byEdition(shown).map((formats) => (
          <EditionLines key={formats[0]?.editionId} work={work} formats={formats} />
        ))}
        {work.formats.length === 0 ? (
          <p className="soft">{counted(work.editions, 'edition')}, no format yet</p>
        ) : null}
        {others > 0 ? (
          <p className="soft work-entry-others">
            and {counted(others, 'format')} not {only}
          </p>
        ) : null}
      </div>
    </li>
  );
}

interface WorksListProps {
  works: readonly WorkRow[];
  /** Shows formats of this standing alone. */
  only: FormatStanding | '';
  /** The list answers an older question while the next answer comes. */
  stale: boolean;
}

/** The works with each format's standing, edition and number; a work's name opens it. */
export function WorksList({ works, only, stale }: WorksListProps) {
  return (
    <ul className="works-list" aria-label="Works" aria-busy={stale || undefined} onKeyDown={onListKey}>
      {works.map((work) => (
        <WorkEntry key={work.id} work={work} only={only} />
      ))}
    </ul>
  );
}
