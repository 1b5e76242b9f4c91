import { PageHeader } from '../../ui/index.ts';

/** The Numbers screen. */
export default function NumbersScreen() {
  return <PageHeader title="Numbers" />;
}
