import { useState } from 'react';
import { announce } from '../status.ts';
import { Button, IconButton, Notice, PageHeader, Section, Standing, Tabs } from '../ui/index.ts';
import { DialogSpecimens } from './dialogs.tsx';
import { FieldSpecimens } from './fields.tsx';
import { STANDINGS } from './standings.ts';
import { TableSpecimens } from './tables.tsx';

type Part = 'fields' | 'tables' | 'standings' | 'notices' | 'dialogs';

function StandingSpecimens() {
  return (
    <div className="columns">
      {STANDINGS.map((family) => (
        <div className="stack" key={family[0]?.of}>
          <h3>{family[0]?.of}</h3>
          {family.map((standing) => (
            <Standing key={standing.value} {...standing} />
          ))}
        </div>
      ))}
    </div>
  );
}

function NoticeSpecimens() {
  return (
    <div className="stack">
      <Notice title="Prices differ.">The e-book costs more than the paperback on two channels.</Notice>
      <Notice tone="care" title="Three days left." action={<Button>Open the task</Button>}>
        Broadside Wholesale has not yet confirmed the removal it was asked for on 2026-11-14.
      </Notice>
      <Notice tone="stop" title="Not done.">
        The title of this edition is locked; prepare the next edition to change it.
      </Notice>
      <Notice tone="done" title="The catalogue is sound.">
        1,204 journal entries, one unbroken chain.
      </Notice>
      <div className="row">
        <Button onClick={() => announce('Saved: the salt is in the almanac.')}>Say something</Button>
        <Button onClick={() => announce('The number is spent and cannot be used again.', 'refused')}>
          Refuse something
        </Button>
      </div>
    </div>
  );
}

function ButtonSpecimens() {
  return (
    <div className="row">
      <Button kind="primary">Assign the next number</Button>
      <Button>Copy the format</Button>
      <Button kind="danger">Cancel the format</Button>
      <Button kind="quiet">Edit</Button>
      <Button kind="primary" pending>
        Saving
      </Button>
      <Button disabled reason="Choose a block first.">
        Reserve
      </Button>
      <IconButton sign="add" label="Add a work" onClick={() => announce('Added.')} />
    </div>
  );
}

/** Every component in every state, for those who build screens; left out of the product. */
export default function Specimens() {
  const [part, setPart] = useState<Part>('fields');
  return (
    <>
      <PageHeader
        title="The Salt Almanac"
        italic
        crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: 'The Salt Almanac' }]}
        lede="A novel in two editions · specimen of every component"
        actions={
          <>
            <Button>Plan the release</Button>
            <Button kind="primary">Prepare the next edition</Button>
          </>
        }
      />
      <Section title="Buttons">
        <ButtonSpecimens />
      </Section>
      <Section title="Parts">
        <Tabs<Part>
          label="Parts"
          value={part}
          onChange={setPart}
          tabs={[
            { id: 'fields', label: 'Fields' },
            { id: 'tables', label: 'Tables', count: 4 },
            { id: 'standings', label: 'Standings' },
            { id: 'notices', label: 'Notices' },
            { id: 'dialogs', label: 'Dialogs' },
          ]}
        >
          {part === 'fields' ? <FieldSpecimens /> : null}
          {part === 'tables' ? <TableSpecimens /> : null}
          {part === 'standings' ? <StandingSpecimens /> : null}
          {part === 'notices' ? <NoticeSpecimens /> : null}
          {part === 'dialogs' ? <DialogSpecimens /> : null}
        </Tabs>
      </Section>
    </>
  );
}
