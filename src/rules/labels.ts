/** How an edition is called: 1st, 2nd, 3rd, 11th, 21st edition. */
export function ordinal(number: number): string {
  const tail =
    number % 100 >= 11 && number % 100 <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][number % 10] ?? 'th');
  return `${number}${tail}`;
}

/** 'The Salt Almanac, 2nd edition'; an edition without a number is named by its title alone. */
export function editionLabel(edition: { title: string; number: number | null }): string {
  return edition.number === null ? edition.title : `${edition.title}, ${ordinal(edition.number)} edition`;
}
