import { useCallback, useRef, useState } from 'react';
import { useQueryOf } from '../../api.ts';
import { useAsOf } from '../../location.ts';
import { useReadOnly } from '../../read-only.ts';
import { announce } from '../../status.ts';
import { Button, Notice, PageHeader, Refused, Tabs } from '../../ui/index.ts';
import { AgendaDialog, type Question } from './agenda-dialog.tsx';
import { AgendaFilter } from './agenda-filter.tsx';
import { AgendaView } from './agenda-view.tsx';
import { CalendarButton } from './calendar-button.tsx';
import { useGoToTask, useKeptPlace, useTaskKeys } from './task-keys.ts';
import { useAgenda, useAgendaTerms } from './use-agenda.ts';
import { type Asking, blockedBy, type Task } from './words.ts';
import './agenda.css';

/** The Agenda screen: what is to be done, by day. */
export default function AgendaScreen() {
  const info = useQueryOf('catalogue.info', {});
  const today = info.data?.today;
  return today === undefined ? <PageHeader title="Agenda" /> : <Agenda today={today} />;
}

function Agenda({ today }: { today: string }) {
  const { asOf } = useAsOf();
  const readOnly = useReadOnly();
  const terms = useAgendaTerms();
  const agenda = useAgenda(terms, today);
  const [question, setQuestion] = useState<Question>();
  const list = useRef<HTMLDivElement>(null);
  const keepPlace = useKeptPlace(list, question !== undefined);
  const ask = useCallback(
    (what: Asking, task: Task) => {
      const reason =
        what === 'request' ? undefined : (readOnly ?? (what === 'done' ? blockedBy(task) : undefined));
      if (reason !== undefined) return announce(reason, 'refused');
      keepPlace();
      setQuestion({ what, task });
    },
    [readOnly, keepPlace],
  );
  const byKey = (what: Asking, taskId: number) => {
    const task = agenda.unfinished.find((one) => one.id === taskId);
    if (task) ask(what, task);
  };
  useTaskKeys(list, byKey);
  useGoToTask(list, agenda.open.data);
  const create = () => setQuestion({ what: 'new' });
  const newTask = (
    <Button onClick={create} disabled={readOnly !== undefined} reason={readOnly}>
      New task
    </Button>
  );
  return (
    <>
      <PageHeader
        title="Agenda"
        lede={agenda.open.data ? <Lede agenda={agenda} /> : undefined}
        actions={
          <>
            <CalendarButton readOnly={readOnly} />
            {newTask}
          </>
        }
      />
      {asOf === undefined ? null : (
        <div className="agenda-note">
          <Notice>The agenda has no past days: it shows the tasks as they stand now.</Notice>
        </div>
      )}
      <Refused refusal={agenda.open.error ?? agenda.ended.error} />
      <AgendaFilter terms={terms} editionLabel={agenda.editionLabel} />
      <Tabs
        label="Views of the agenda"
        value={terms.view}
        onChange={terms.show}
        tabs={[
          { id: 'todo', label: 'To do', count: agenda.todo.length },
          { id: 'waiting', label: 'Waiting', count: agenda.waiting.length },
          { id: 'ended', label: 'Done and dropped' },
        ]}
      >
        <div ref={list}>
          <AgendaView terms={terms} agenda={agenda} newTask={newTask} context={{ today, readOnly, ask }} />
        </div>
      </Tabs>
      <AgendaDialog
        question={question}
        today={today}
        workId={terms.workId}
        known={agenda.waitedFor}
        readOnly={readOnly}
        onChange={setQuestion}
      />
    </>
  );
}

function Lede({ agenda }: { agenda: ReturnType<typeof useAgenda> }) {
  const { todo, overdue, waiting } = agenda;
  return (
    <p>
      {todo.length.toLocaleString()} to do, {overdue.toLocaleString()} overdue,{' '}
      {waiting.length.toLocaleString()} waiting for somebody
    </p>
  );
}
