import { FINISHES, INTERIOR_COLOURS } from '../../../../src/contract/terms.ts';
import type { LengthUnit } from '../../../lib/length.ts';
import { Checkbox, NumberInput, Select, TextInput } from '../../../ui/index.ts';
import type { FormatInputsProps } from './form-inputs.tsx';
import { UnlessLocked } from './locks.tsx';
import { TrimInputs } from './trim-inputs.tsx';

const UNDECIDED = 'not decided';
const COLOURS = [UNDECIDED, ...INTERIOR_COLOURS].map((value) => ({ value, label: value }));
const COVERS = [UNDECIDED, ...FINISHES].map((value) => ({ value, label: value }));

function InteriorInputs({ form, errorOf, format }: FormatInputsProps) {
  const { draft, set } = form;
  return (
    <div className="columns">
      <UnlessLocked format={format} field="pages" value={draft.pages}>
        <NumberInput
          label="Pages"
          unit="pages"
          min={1}
          max={20_000}
          value={draft.pages ?? undefined}
          onChange={(pages) => set('pages', pages ?? null)}
          error={errorOf('pages')}
          name="pages"
        />
      </UnlessLocked>
      <UnlessLocked format={format} field="interiorColour" value={draft.interiorColour}>
        <Select
          label="Interior colour"
          value={draft.interiorColour ?? UNDECIDED}
          onChange={(value) =>
            set('interiorColour', INTERIOR_COLOURS.find((colour) => colour === value) ?? null)
          }
          choices={COLOURS}
          error={errorOf('interiorColour')}
          name="interiorColour"
        />
      </UnlessLocked>
      <UnlessLocked format={format} field="paper" value={draft.paper}>
        <TextInput
          label="Paper"
          value={draft.paper}
          onChange={(paper) => set('paper', paper)}
          help="Such as: cream 80 gsm."
          error={errorOf('paper')}
          name="paper"
        />
      </UnlessLocked>
    </div>
  );
}

/** How a printed format is made. */
export function PrintInputs(props: FormatInputsProps & { unit: LengthUnit }) {
  const { form, errorOf, format } = props;
  const { draft, set } = form;
  return (
    <>
      <TrimInputs {...props} />
      <InteriorInputs form={form} errorOf={errorOf} format={format} />
      <div className="columns">
        <UnlessLocked format={format} field="finish" value={draft.finish}>
          <Select
            label="Cover finish"
            value={draft.finish ?? UNDECIDED}
            onChange={(value) => set('finish', FINISHES.find((finish) => finish === value) ?? null)}
            choices={COVERS}
            error={errorOf('finish')}
            name="finish"
          />
        </UnlessLocked>
        <UnlessLocked format={format} field="insideCoverPrint" value={draft.insideCoverPrint ? 'yes' : 'no'}>
          <Checkbox
            label="Printing inside the cover"
            checked={draft.insideCoverPrint}
            onChange={(inside) => set('insideCoverPrint', inside)}
            error={errorOf('insideCoverPrint')}
            name="insideCoverPrint"
          />
        </UnlessLocked>
      </div>
    </>
  );
}
