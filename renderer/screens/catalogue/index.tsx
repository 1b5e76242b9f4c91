import { PageHeader } from '../../ui/index.ts';

/** The Catalogue screen. */
export default function CatalogueScreen() {
  return <PageHeader title="Catalogue" />;
}
