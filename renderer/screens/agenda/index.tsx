import { PageHeader } from '../../ui/index.ts';

/** The Agenda screen. */
export default function AgendaScreen() {
  return <PageHeader title="Agenda" />;
}
