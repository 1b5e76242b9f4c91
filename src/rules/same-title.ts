/** A title for comparison: no case, signs or accents set apart, an article at its end put first again. */
function bareTitle(title: string): string {
  const turned = /^(.*), (the|an?)$/i.exec(title.trim());
  return (turned ? `${turned[2]} ${turned[1]}` : title)
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll('&', ' and ')
    .replaceAll(/['’]/g, '')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/**
 * Whether a title as a channel shows it is the recorded one, with or without its subtitle; one that the channel has
 * cut short, with dots at its end, is taken for what it begins. Common practice, no source.
 */
export function sameTitle(shown: string, recorded: { title: string; subtitle: string }): boolean {
  const forms = [recorded.title, `${recorded.title} ${recorded.subtitle}`].map(bareTitle);
  const cut = /(?:…|\.\.\.)\s*$/.test(shown);
  const bare = bareTitle(shown);
  return forms.some((form) => (cut ? bare !== '' && form.startsWith(bare) : form === bare));
}
