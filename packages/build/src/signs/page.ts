import { CHECKS } from '../assess/checks/all.ts';
import type { Sign } from './sign.ts';
import { SIGNS, WITHOUT_SIGN } from './signs.ts';

const link = (id: string): string => `[${id}](#${id.replace('.', '-')})`;

const section = (sign: Sign): string => `## <a id="${sign.id}"></a>${sign.name}

- **Early signs:** ${sign.early}
- **When it goes:** ${sign.goes}
- **Judged by:** ${[...(sign.checks.length > 0 ? [sign.checks.map(link).join(', ')] : []), ...(sign.notJudged ? [sign.notJudged] : [])].join('. ')}
- **Service check:** ${sign.service}
- **How often:** ${sign.every}
- **From:** ${sign.from}
`;

/** The page of consequences: failures seen in practice, their early signs, and the findings that judge them. */
export function consequencesPage(): string {
  const named = new Set<string>(SIGNS.flatMap(({ checks }) => checks));
  const rows = CHECKS.filter(({ id }) => named.has(id)).map(
    ({ id, title, consequence }) => `| <a id="${id.replace('.', '-')}"></a>${id} | ${title} | ${consequence} |`,
  );
  const without = Object.entries(WITHOUT_SIGN).map(([id, why]) => `- ${id}: ${why}.`);
  return `# Consequences

What fails in practice in a drive of one’s own, what is seen and heard before, and what to look at how often. Made from \`packages/build/src/signs\`; do not
edit by hand. How often is a start for a vehicle that nobody has run yet: local codes, inspection and licensed practice decide. Look with the engine off, the
key out and the wheel held; a drive that can turn takes fingers.

${SIGNS.map(section).join('\n')}
## Findings named here

| finding | what it judges | at stake |
|---|---|---|
${rows.join('\n')}

Without early signs:

${without.join('\n')}
`;
}
