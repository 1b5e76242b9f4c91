/** The address that opens a new message in the mail program; undefined where requests go to a web page. */
export function mailAddress(request: { to: string; subject: string; text: string }): string | undefined {
  const { to, subject, text } = request;
  if (!/^[^\s@/]+@[^\s@/]+$/.test(to.trim())) return undefined;
  // RFC 6068: lines of a body are parted by CR LF, and every field is percent-encoded.
  const body = text.replace(/\r?\n/g, '\r\n');
  return `mailto:${encodeURIComponent(to.trim())}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(body)}`;
}
