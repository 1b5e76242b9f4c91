import { PageHeader } from '../../ui/index.ts';

/** The Audit screen. */
export default function AuditScreen() {
  return <PageHeader title="Audit" />;
}
