import { type Settings, updateSettings } from '../../../../src/contract/settings.ts';
import { Button, Refused, TextInput } from '../../../ui/index.ts';
import { useCheckedCommand } from '../../settings/parts/use-checked-command.ts';
import { useRecord } from '../../work/parts/use-record.ts';

/** Publisher and imprint, as Settings holds them. */
export function NamesForm({ settings, readOnly }: { settings: Settings; readOnly: string | undefined }) {
  const form = useRecord({ publisher: settings.publisher, imprint: settings.imprint });
  const command = useCheckedCommand('settings.update', updateSettings.input);
  const { publisher, imprint } = form.draft;
  const named = publisher.trim();
  const save = () =>
    command.send(
      { publisher: named, imprint: imprint.trim() === '' ? named : imprint.trim() },
      'Publisher and imprint are kept.',
      named === '' ? { publisher: 'Write the name of your publisher.' } : {},
    );
  return (
    <form
      className="start-names"
      ref={command.form}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <TextInput
        label="Publisher"
        name="publisher"
        value={publisher}
        onChange={(text) => form.set('publisher', text)}
        help="Who holds the numbers."
        error={command.errorOf('publisher')}
      />
      <TextInput
        label="Imprint"
        name="imprint"
        value={imprint}
        onChange={(text) => form.set('imprint', text)}
        help="The name on the title page; left empty, the publisher’s."
        error={command.errorOf('imprint')}
      />
      <Refused refusal={command.refusal} fields={['publisher', 'imprint']} />
      <div>
        <Button
          type="submit"
          kind="primary"
          pending={command.pending}
          disabled={readOnly !== undefined}
          reason={readOnly}
        >
          Keep these names
        </Button>
      </div>
    </form>
  );
}
