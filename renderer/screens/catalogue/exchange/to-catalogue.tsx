import { Link } from 'wouter';

/** The way on once a file was taken over. */
export function ToCatalogue() {
  return (
    <p>
      <Link href="/catalogue" className="button button-plain">
        Go to the catalogue
      </Link>
    </p>
  );
}
