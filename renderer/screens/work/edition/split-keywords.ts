/** The keywords in a typed or pasted text: parted by semicolons, commas or new lines, each once. */
export function splitKeywords(text: string): string[] {
  const parts = text.split(/[;,\n]/).map((part) => part.replace(/\s+/g, ' ').trim());
  return [...new Set(parts.filter((part) => part !== ''))];
}
