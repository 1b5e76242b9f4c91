import { PageHeader } from '../../ui/index.ts';

/** The Channels screen. */
export default function ChannelsScreen() {
  return <PageHeader title="Channels" />;
}
