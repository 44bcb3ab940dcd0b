import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/generated/report.js';
import { SHORT_CAUTION } from '../../src/model/caution.js';
import { es } from '../../src/report/languages/es.js';
import { ahx, poor, sprinkler, workFolder } from './run-ahx.js';

const { path } = workFolder();

describe('ahx check --language', () => {
  it('prints messages, verdicts and caution in the language, whatever the region', () => {
    const spanish = ahx(['check', '--language', 'es', poor]);
    expect(spanish.code).toBe(1);
    expect(spanish.out).toContain('La perforación');
    expect(spanish.out).toContain('No es AHX 0.1 válido');
    expect(spanish.out).toContain(es.phrases.shortCaution);
    expect(spanish.out).not.toContain(SHORT_CAUTION);
    expect(ahx(['check', '-l', 'es-MX', poor])).toEqual(spanish);
    expect(ahx(['check', '-l', 'en-US', poor])).toEqual(ahx(['check', poor]));
    expect(ahx(['check', '-q', '-l', 'es', sprinkler]).out).toMatch(
      /^AHX 0\.1 válido\.\nComprobación de los datos para la obra \(finalidad: revisar\): .*\n$/,
    );
  });

  it('goes into the report, and nothing else of it hangs on the language', () => {
    const reports = ['es', 'en'].map((tag) => JSON.parse(ahx(['check', '-f', 'json', '-l', tag, poor]).out) as Report);
    expect(reports.map(({ language }) => language)).toEqual(['es', undefined]);
    expect(reports[0].verdict).toEqual(reports[1].verdict);
    expect(reports[0].findings.map(({ rule, data }) => [rule, data])).toEqual(
      reports[1].findings.map(({ rule, data }) => [rule, data]),
    );
  });

  it('is what the config says where the call says nothing', () => {
    const config = path('ahx.config.json');
    writeFileSync(config, JSON.stringify({ ahx: '0.1', kind: 'config', language: 'es' }));
    expect(ahx(['check', '-q', '--config', config, sprinkler]).out).toContain('AHX 0.1 válido.');
    expect(ahx(['check', '-q', '--config', config, '-l', 'en', sprinkler]).out).toContain('Valid AHX 0.1.');
  });

  it('says which languages there are where it is asked for another one', () => {
    const { code, out, err } = ahx(['check', '--language', 'xx', poor]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('"xx"');
    expect(err).toContain('en (English) and es (Spanish)');
  });
});
