import type { Settings } from '../../../src/contract/settings.ts';
import { Button, LengthInput, NumberInput, Select, TextInput } from '../../ui/index.ts';
import type { SettingFields } from './fields.ts';

type Paper = Settings['papers'][number];
type Measure = 'pages' | 'leaf';

const MEASURES: { value: Measure; label: string }[] = [
  { value: 'pages', label: 'Pages to the inch' },
  { value: 'leaf', label: 'Thickness of a leaf' },
];

/** What the contract takes of a paper; the form says it before it is sent. */
const isWrong = ({ name, bulk }: Paper) =>
  name.trim() === '' ||
  ('pagesPerInch' in bulk
    ? bulk.pagesPerInch < 50 || bulk.pagesPerInch > 3_000
    : bulk.leafUm < 10 || bulk.leafUm > 2_000);

interface RowProps {
  paper: Paper;
  index: number;
  unit: Settings['lengthUnit'];
  error: string | undefined;
  onChange: (paper: Paper) => void;
  onRemove: () => void;
}

/** How thick it is, in the measure its maker states; 0 stands for an emptied field and is refused. */
function BulkInput({ paper, index, unit, onChange }: RowProps) {
  const { bulk } = paper;
  if ('pagesPerInch' in bulk)
    return (
      <NumberInput
        label={`Pages to the inch, paper ${index + 1}`}
        min={50}
        max={3_000}
        value={bulk.pagesPerInch || undefined}
        onChange={(pagesPerInch) => onChange({ ...paper, bulk: { pagesPerInch: pagesPerInch ?? 0 } })}
      />
    );
  return (
    <LengthInput
      label={`Thickness of a leaf, paper ${index + 1}`}
      unit={unit}
      value={bulk.leafUm || undefined}
      onChange={(leafUm) => onChange({ ...paper, bulk: { leafUm: leafUm ?? 0 } })}
    />
  );
}

function PaperRow(props: RowProps) {
  const { paper, index, error, onChange, onRemove } = props;
  const measure: Measure = 'pagesPerInch' in paper.bulk ? 'pages' : 'leaf';
  return (
    <fieldset className="field">
      <legend className="visually-hidden">Paper {index + 1}</legend>
      <div className="columns">
        <TextInput
          label={`Name of paper ${index + 1}`}
          value={paper.name}
          onChange={(name) => onChange({ ...paper, name })}
          error={error}
        />
        <Select<Measure>
          label={`Measure of paper ${index + 1}`}
          value={measure}
          onChange={(next) =>
            onChange({ ...paper, bulk: next === 'pages' ? { pagesPerInch: 400 } : { leafUm: 125 } })
          }
          choices={MEASURES}
        />
        <BulkInput {...props} />
        <TextInput
          label={`Who says so, paper ${index + 1}`}
          value={paper.source}
          onChange={(source) => onChange({ ...paper, source })}
        />
      </div>
      <Button kind="quiet" label={`Remove paper ${index + 1}`} onClick={onRemove}>
        Remove
      </Button>
    </fieldset>
  );
}

/** The user's own papers, from which spines are worked out; the usual ones stand after them in the cover dialog. */
export function Papers({ values, change, errorOf }: SettingFields) {
  const { papers, lengthUnit } = values;
  const write = (next: Paper[]) => change({ papers: next });
  return (
    <div className="stack">
      <p className="soft">
        Papers of your printers, with the thickness each states: the spine of a book follows from it. A few
        usual papers are offered beside them where a cover is worked out.
      </p>
      {papers.map((paper, index) => (
        <PaperRow
          // biome-ignore lint/suspicious/noArrayIndexKey: a paper is told by its place while its name is typed
          key={index}
          paper={paper}
          index={index}
          unit={lengthUnit}
          error={isWrong(paper) ? errorOf('papers') : undefined}
          onChange={(next) => write(papers.map((one, at) => (at === index ? next : one)))}
          onRemove={() => write(papers.filter((_, at) => at !== index))}
        />
      ))}
      <div>
        <Button
          onClick={() => write([...papers, { name: '', bulk: { pagesPerInch: 400 }, source: '' }])}
          disabled={papers.length >= 200}
          reason={papers.length >= 200 ? 'There are 200 papers already.' : undefined}
        >
          Add a paper
        </Button>
      </div>
    </div>
  );
}
