import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import PDFDocument from 'pdfkit';
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

const MARGIN = 54;
const FOOT = 62;
const INK = '#1b2130';
const SOFT = '#4f5665';
type Face = 'text' | 'strong' | 'title';
const FILES: Record<Face, string> = {
  text: 'NotoSans_400Regular.ttf',
  strong: 'NotoSans_600SemiBold.ttf',
  title: 'NotoSerif_400Regular.ttf',
};

const readFace = (face: Face) =>
  readFileSync(fileURLToPath(new URL(`../../resources/fonts/${FILES[face]}`, import.meta.url)));

/** Replaces what the embedded faces cannot show, so that nothing is lost unseen. */
function shower(): (text: string) => string {
  const face = fontkit.create(readFace('text'));
  const has = (sign: string) =>
    'hasGlyphForCodePoint' in face && face.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0);
  return (text) => [...text].map((sign) => (sign === '\n' || has(sign) ? sign : '\u25a1')).join('');
}

/** What a piece of text is, for those who have it read out: ISO 32000-1, section 14.8.4. */
type Tag = 'H1' | 'H2' | 'H3' | 'P';

interface Look {
  face?: Face;
  size?: number;
  indent?: number;
  colour?: string;
  tag?: Tag;
}

class Sheet {
  readonly doc: PDFKit.PDFDocument;
  readonly #root: PDFKit.PDFStructureElement;
  readonly #show = shower();

  constructor(audit: Audit, paper: 'A4' | 'Letter') {
    this.doc = new PDFDocument({
      size: paper === 'A4' ? 'A4' : 'LETTER',
      margins: { top: MARGIN, left: MARGIN, right: MARGIN, bottom: FOOT },
      bufferPages: true,
      pdfVersion: '1.7',
      tagged: true,
      lang: 'en',
      displayTitle: true,
      font: readFace('text') as never,
      info: {
        Title: `Audit of ${audit.catalogueName}, ${audit.asOf}`,
        Producer: 'Edition Ledger',
        CreationDate: new Date(`${audit.today}T00:00:00Z`),
      },
    });
    for (const face of ['text', 'strong', 'title'] as const) this.doc.registerFont(face, readFace(face));
    this.#root = this.doc.struct('Document');
    this.doc.addStructure(this.#root);
  }

  write(text: string, look: Look = {}): void {
    const { doc } = this;
    const { face = 'text', size = 9.5, indent = 0, colour = INK, tag = 'P' } = look;
    const width = doc.page.width - 2 * MARGIN - indent;
    const shown = this.#show(text);
    doc.font(face).fontSize(size).fillColor(colour);
    const room = doc.page.height - FOOT - doc.y;
    if (doc.heightOfString(shown, { width }) > room && room < 120) doc.addPage();
    this.#root.add(doc.struct(tag, {}, () => void doc.text(shown, MARGIN + indent, doc.y, { width })));
  }

  /** Small print under what it belongs to. */
  small(text: string, indent = 22, size = 8.5): void {
    this.write(text, { size, indent, colour: SOFT });
  }

  /** What is no part of the text: rules, and what stands on every page. */
  #aside(draw: () => void): void {
    this.doc.markContent('Artifact');
    draw();
    this.doc.endMarkedContent();
  }

  /** Ends the document. */
  end(): void {
    this.#root.end();
    this.doc.end();
  }

  gap(points = 6): void {
    this.doc.y += points;
  }

  /** A heading stays with what follows it. */
  heading(text: string, size: number): void {
    if (this.doc.y > this.doc.page.height - FOOT - 90) this.doc.addPage();
    this.gap(size);
    this.write(text, { face: 'title', size, tag: 'H2' });
    const { doc } = this;
    this.#aside(() => {
      doc
        .moveTo(MARGIN, doc.y + 2)
        .lineTo(doc.page.width - MARGIN, doc.y + 2)
        .lineWidth(0.7)
        .stroke(INK);
    });
    this.gap();
  }

  /** Under every page: the file, its days, the rules, the seal of the journal, and which page of how many it is. */
  foot(audit: Audit): void {
    const { doc } = this;
    const { count } = doc.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      doc.switchToPage(page);
      doc.page.margins.bottom = 0;
      const y = doc.page.height - FOOT + 18;
      const line = `${audit.fileName} · made on ${audit.today} · as of ${audit.asOf} · rule set ${audit.ruleSet}`;
      doc.font('text').fontSize(7).fillColor(SOFT);
      this.#aside(() => {
        doc.text(this.#show(line), MARGIN, y, { lineBreak: false });
        doc.text(`Page ${page + 1} of ${count}`, MARGIN, y, {
          width: doc.page.width - 2 * MARGIN,
          align: 'right',
        });
        doc.text(`Journal head ${audit.journalHead}`, MARGIN, y + 11, { lineBreak: false });
      });
    }
  }
}

function writeFormats(sheet: Sheet, audit: Audit): void {
  sheet.heading('Formats', 15);
  for (const { name, rows } of formatGroups(audit)) {
    sheet.gap();
    sheet.write(`${name} (${rows.length})`, { face: 'strong', size: 10.5, tag: 'H3' });
    for (const row of rows) {
      sheet.gap(3);
      sheet.write(`${row.editionLabel} · ${row.name}`, { indent: 10 });
      sheet.small(row.hyphenated ? `ISBN ${row.hyphenated}` : 'no number yet');
      for (const line of row.channels) sheet.small(line);
    }
  }
}

function writeFindings(sheet: Sheet, audit: Audit): void {
  sheet.heading('Findings', 15);
  if (audit.findings.length === 0) sheet.write('No rule found anything.');
  for (const { severity, count, rules } of findingGroups(audit)) {
    sheet.gap();
    sheet.write(`${SEVERITY_NAMES[severity]} (${count})`, { face: 'strong', size: 10.5, tag: 'H3' });
    for (const found of rules) {
      sheet.gap(3);
      for (const finding of found) sheet.write(`• ${finding.message}`, { indent: 10 });
      sheet.small(`To mend: ${found[0]?.mend ?? ''}`);
      sheet.small(`Rule: ${found[0]?.rule ?? ''} (${found[0]?.source ?? ''})`);
    }
  }
  if (audit.accepted.length > 0) sheet.heading('Accepted', 15);
  for (const { message, accepted } of audit.accepted)
    sheet.write(
      `• ${message} “${accepted.reason}” Accepted on ${accepted.on}, to be looked at again on ${accepted.reviewOn}.`,
    );
}

/** The audit as a PDF document with its faces embedded; the same audit gives the same text. */
export function auditPdf(audit: Audit, paper: 'A4' | 'Letter'): Buffer {
  const sheet = new Sheet(audit, paper);
  sheet.write(`Audit of ${audit.catalogueName}`, { face: 'title', size: 24, tag: 'H1' });
  sheet.gap();
  if (audit.demo) sheet.write(DEMO, { face: 'strong', size: 10 });
  sheet.write(`As of ${audit.asOf}: ${headline(audit)}.`, { face: 'title', size: 11.5 });
  sheet.gap(8);
  for (const [name, value] of reportFacts(audit)) sheet.small(`${name}: ${value}`, 0);
  writeFormats(sheet, audit);
  writeFindings(sheet, audit);
  sheet.gap(14);
  sheet.small(CAUTION, 0, 8);
  sheet.foot(audit);
  sheet.end();
  const parts: Buffer[] = [];
  for (let part = sheet.doc.read(); part !== null; part = sheet.doc.read()) parts.push(part as Buffer);
  return Buffer.concat(parts);
}
