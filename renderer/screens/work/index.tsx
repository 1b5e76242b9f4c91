import { PageHeader } from '../../ui/index.ts';

/** The Work screen. */
export default function WorkScreen() {
  return <PageHeader title="Work" />;
}
