import type { Audit } from '../contract/audit.ts';
import {
  CAUTION,
  DEMO,
  findingGroups,
  formatGroups,
  headline,
  reportFacts,
  SEVERITY_NAMES,
} from './report-parts.ts';

const SIGNS: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const safe = (text: string) => text.replace(/[&<>"]/g, (sign) => SIGNS[sign] ?? sign);

const STYLE = `body{font:15px/1.5 system-ui,sans-serif;color:#1b2130;background:#fcfcfa;max-width:60rem;margin:2rem auto;padding:0 1rem}
h1,h2{font-family:Georgia,serif;font-weight:400}h1{border-bottom:3px double}h3{margin-bottom:.2rem}
table{border-collapse:collapse;width:100%}th,td{text-align:start;vertical-align:top;padding:.35rem .75rem .35rem 0;border-bottom:1px solid #d6d8d3}
.mono{font-family:monospace;overflow-wrap:anywhere}.demo{border:2px solid #775000;padding:.5rem 1rem}tr,li{break-inside:avoid}`;

function formats(audit: Audit): string {
  return formatGroups(audit)
    .map(({ name, rows }) => {
      const lines = rows.map(
        (row) =>
          `<tr><th scope="row">${safe(`${row.editionLabel} · ${row.name}`)}</th><td class="mono">${safe(row.hyphenated ?? 'no number yet')}</td><td>${row.channels.map(safe).join('<br>') || 'on no channel'}</td></tr>`,
      );
      return `<h3>${name} (${rows.length})</h3><table><thead><tr><th scope="col">Format</th><th scope="col">ISBN</th><th scope="col">Channels</th></tr></thead><tbody>${lines.join('')}</tbody></table>`;
    })
    .join('');
}

function findings(audit: Audit): string {
  if (audit.findings.length === 0) return '<p>No rule found anything.</p>';
  return findingGroups(audit)
    .map(({ severity, count, rules }) => {
      const parts = rules.map((found) => {
        const items = found.map((finding) => `<li>${safe(finding.message)}</li>`).join('');
        return `<ul>${items}</ul><p>To mend: ${safe(found[0]?.mend ?? '')} <small>${safe(`${found[0]?.rule}; ${found[0]?.source}`)}</small></p>`;
      });
      return `<h3>${SEVERITY_NAMES[severity]} (${count})</h3>${parts.join('')}`;
    })
    .join('');
}

function accepted(audit: Audit): string {
  if (audit.accepted.length === 0) return '';
  const items = audit.accepted.map(
    ({ message, accepted: { reason, on, reviewOn } }) =>
      `<li>${safe(message)} “${safe(reason)}” Accepted on ${on}, to be looked at again on ${reviewOn}.</li>`,
  );
  return `<h2>Accepted</h2><ul>${items.join('')}</ul>`;
}

/** The audit as one HTML page that stands alone: no script, no outside reference; prints on the paper that is named. */
export function auditHtml(audit: Audit, paper: 'A4' | 'Letter'): string {
  const facts = reportFacts(audit)
    .map(([name, value]) => `<tr><th scope="row">${name}</th><td class="mono">${safe(value)}</td></tr>`)
    .join('');
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>${safe(`Audit of ${audit.catalogueName}, ${audit.asOf}`)}</title><style>@page{size:${paper};margin:18mm}${STYLE}</style></head><body>
<h1>Audit of ${safe(audit.catalogueName)}</h1>${audit.demo ? `<p class="demo">${DEMO}</p>` : ''}
<p>As of ${audit.asOf}: ${headline(audit)}.</p><table><tbody>${facts}</tbody></table>
<h2>Formats</h2>${formats(audit)}<h2>Findings</h2>${findings(audit)}${accepted(audit)}<p><small>${safe(CAUTION)}</small></p></body></html>\n`;
}
