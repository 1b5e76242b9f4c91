import { useState } from 'react';
import { CallRefused, call } from '../../api.ts';
import { saveMade } from '../../lib/save-file.ts';
import { announce } from '../../status.ts';
import { Button } from '../../ui/index.ts';
import { saveText } from './save.ts';

type Kind = 'text' | 'csv' | 'json' | 'html' | 'A4' | 'Letter';

const TYPES: Record<'text' | 'csv' | 'json', string> = {
  text: 'text/plain',
  csv: 'text/csv',
  json: 'application/json',
};

/** Asks the host for the report and saves it; JSON is the audit itself, as `audit.run` answers it. */
async function save(kind: Kind, asOf: string | undefined): Promise<void> {
  if (kind === 'html' || kind === 'A4' || kind === 'Letter') {
    const paper = kind === 'html' ? {} : { paper: kind };
    const made = await call('audit.report', { asOf, as: kind === 'html' ? 'html' : 'pdf', ...paper });
    saveMade(made);
    return announce(`${made.fileName} goes to your downloads.`);
  }
  const report = await call('audit.text', { asOf, as: kind === 'csv' ? 'csv' : 'text' });
  if (kind !== 'json') return saveText(report.fileName, report.text, TYPES[kind]);
  const audit = await call('audit.run', { asOf });
  const fileName = report.fileName.replace(/\.txt$/, '.json');
  saveText(fileName, `${JSON.stringify(audit, null, 2)}\n`, TYPES.json);
}

/** Buttons that save the audit as a file or print it. */
export function Exports({ asOf }: { asOf: string | undefined }) {
  const [pending, setPending] = useState<Kind>();
  const start = async (kind: Kind) => {
    setPending(kind);
    try {
      await save(kind, asOf);
    } catch (thrown) {
      const why = thrown instanceof CallRefused ? thrown.message : String(thrown);
      announce(`The audit was not saved. ${why}`, 'refused');
    } finally {
      setPending(undefined);
    }
  };
  const button = (kind: Kind, label: string) => (
    <Button pending={pending === kind} onClick={() => void start(kind)}>
      {label}
    </Button>
  );
  return (
    <>
      {button('A4', 'Save as PDF (A4)')}
      {button('Letter', 'Save as PDF (Letter)')}
      {button('html', 'Save as HTML')}
      {button('text', 'Save as text')}
      {button('csv', 'Save as CSV')}
      {button('json', 'Save as JSON')}
      <Button onClick={() => window.print()}>Print</Button>
    </>
  );
}
