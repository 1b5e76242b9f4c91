import { Notice } from '../../../ui/index.ts';
import type { Advice } from './draft.ts';
import { toneOf, Verdict } from './verdict.tsx';

type FormatAnswer = Advice['formats'][number];
type Line = FormatAnswer['lines'][number];

function RuleLine({ line }: { line: Line }) {
  return (
    <li className="advice-line">
      <p className="advice-line-head">
        <Verdict value={line.verdict} />
        <strong>{line.title}</strong>
      </p>
      {line.detail === '' ? null : (
        <p>
          {line.detail} <span className="soft">(from the records)</span>
        </p>
      )}
      <p>{line.rule}</p>
      <p className="soft">To weigh: {line.weigh}</p>
      <p className="soft advice-source">{line.source}</p>
    </li>
  );
}

const GRANTED = { true: 'As you wish.', false: 'Not as you wish.', null: 'As you decide.' } as const;

function FormatLines({ format }: { format: FormatAnswer }) {
  const { answer } = format;
  return (
    <section className="advice-format" aria-label={format.name}>
      <h3>
        {format.name}{' '}
        {format.hyphenated === null ? null : <span className="mono soft nowrap">{format.hyphenated}</span>}
      </h3>
      <p className="advice-why">
        <Verdict value={format.verdict} /> <span>{format.why}</span>
      </p>
      {answer ? (
        <Notice tone={answer.granted === false ? 'stop' : 'note'} title={GRANTED[`${answer.granted}`]}>
          {answer.sentence} <span className="advice-source">{answer.source}</span>
        </Notice>
      ) : null}
      <ul className="advice-lines">
        {format.lines.map((line) => (
          <RuleLine key={line.change} line={line} />
        ))}
      </ul>
    </section>
  );
}

/** The verdict on all formats together; it stays in sight while changes are ticked. */
export function AdviceHeadline({ advice }: { advice: Advice }) {
  return (
    <div role="status" className="advice-headline">
      {advice.asked === null ? (
        <Notice tone={toneOf(advice.overall)} title={advice.headline} />
      ) : (
        <Notice tone="note" title={advice.asked}>
          By what is known so far: {advice.headline}
        </Notice>
      )}
    </div>
  );
}

/** The answer on each format with its lines, what to do, and the caution. */
export function AdviceAnswer({ advice }: { advice: Advice }) {
  return (
    <div className="stack advice-answer">
      {advice.formats.map((format) => (
        <FormatLines key={`${format.formatId ?? ''}${format.name}`} format={format} />
      ))}
      {advice.toDo.length === 0 || advice.asked !== null ? null : (
        <section aria-label="What to do where the number is kept">
          <h3 className="facts-head">Where the number is kept: what to do</h3>
          <ol className="summary-list">
            {advice.toDo.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </section>
      )}
      <Notice title="The agency’s manual prevails.">{advice.caution}</Notice>
    </div>
  );
}
