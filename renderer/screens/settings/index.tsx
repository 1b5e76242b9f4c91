import { PageHeader } from '../../ui/index.ts';

/** The Settings screen. */
export default function SettingsScreen() {
  return <PageHeader title="Settings" />;
}
