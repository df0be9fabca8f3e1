import { createHash } from 'node:crypto';

const SCRIPT = `
const form = document.querySelector('form');
const says = document.querySelector('[role=status]');
form.addEventListener('submit', async (event) => {
  event.preventDefault();
  says.textContent = 'Asking …';
  try {
    const answer = await fetch('/api/pair', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ code: form.code.value.replace(/\\s/g, ''), device: form.device.value.trim() }),
    });
    if (answer.ok) return location.replace('/');
    const { error } = await answer.json();
    says.textContent = error.problem + ' Accepted: ' + error.accepted + '.';
  } catch {
    says.textContent = 'The host does not answer. Is it still running?';
  }
});`;

const STYLE = `
body { font: 18px/1.5 sans-serif; max-width: 26em; margin: 2em auto; padding: 0 1em; background: #fff; color: #1b2127; }
label { display: block; margin: 1em 0 0.2em; }
input { font: inherit; width: 100%; box-sizing: border-box; padding: 0.6em; border: 2px solid #1b2127; border-radius: 3px; }
button { font: inherit; margin-top: 1em; padding: 0.8em 1.5em; border: 0; border-radius: 3px; background: #2e3c98; color: #fff; }
input:focus, button:focus { outline: 3px solid #2e3c98; outline-offset: 2px; }`;

const hashSource = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** The page that a device sees until it is paired. */
export const PAIRING_PAGE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Pair with Oddwheel</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>Pair this device</h1>
<p>The terminal that runs Oddwheel shows a code of six figures.</p>
<form>
<label for="code">Code</label>
<input id="code" name="code" inputmode="numeric" autocomplete="off" required autofocus>
<label for="device">Name of this device</label>
<input id="device" name="device" autocomplete="off" maxlength="40" value="phone" required>
<button>Pair</button>
<p role="status"></p>
</form>
<p>Others on this network can read along: the connection is not encrypted.</p>
</main>
<script>${SCRIPT}</script>
</body>
</html>
`;

/** Content security policy of the pairing page: its own script and style, and nothing else. */
export const PAIRING_POLICY = `default-src 'none'; script-src ${hashSource(SCRIPT)}; style-src ${hashSource(STYLE)}; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;
