import { escapeMarkup } from '../model/markup-text.ts';
import type { ProblemsError } from '../model/problem.ts';

/** What the development server shows in place of a page while the files hold mistakes: the list, readable on a phone. */
export function renderProblemPage({ problems, message }: ProblemsError): string {
  const title = problems.length === 1 ? 'One mistake to mend' : `${problems.length} mistakes to mend`;
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="icon" href="data:,">
<script type="module" src="/@vite/client"></script>
<style>
:root { color-scheme: light dark; }
body { max-width: 50rem; margin: 0 auto; padding: 1rem; font: 1rem/1.5 system-ui, sans-serif; }
pre { font: 0.9rem/1.5 ui-monospace, monospace; white-space: pre-wrap; overflow-wrap: anywhere; }
</style>
</head>
<body>
<main>
<h1>${title}</h1>
<pre>${escapeMarkup(message)}</pre>
<p>This page comes back by itself when the files are mended and saved.</p>
</main>
</body>
</html>
`;
}
