/** The page as it is served: everything that is on it, empty; `main.ts` fills it in. */
export function renderPage(token: string): string {
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="token" content="${token}">
<title>Take readings</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/src/styles/tokens.css">
<link rel="stylesheet" href="/src/take-readings/page/page.css">
<script type="module" src="/src/take-readings/page/main.ts"></script>
</head>
<body>
<header class="top">
  <h1>Take readings</h1>
  <p><button type="button" id="choose">Sessions</button> <a href="/">To the site</a></p>
</header>
<p id="news" role="status"></p>
<p id="alarm" role="alert"></p>
<main>
  <section id="choosing" aria-labelledby="choosing-name">
    <h2 id="choosing-name">Which session?</h2>
    <ul id="sessions" class="sessions"></ul>
    <p id="unreadable"></p>
    <details>
      <summary>Begin another session</summary>
      <form id="new-session">
        <div id="new-fields" class="fields"></div>
        <button type="submit">Begin it</button>
      </form>
    </details>
  </section>

  <section id="session" aria-labelledby="session-name" hidden>
    <h2 id="session-name"></h2>
    <p id="position"></p>
    <dl id="settings" class="settings" aria-label="What is set on the body"></dl>
    <dl id="context" class="context"></dl>

    <form id="details" class="fields" hidden>
      <p>Fill in before the first reading, and check the settings above on the body itself.</p>
      <label>Date <input id="date" name="date" type="date" required></label>
      <label>Firmware, as the menu shows it <input id="firmware" autocomplete="off"></label>
      <label>Room, such as 21 °C <input id="room" autocomplete="off"></label>
      <label>Warm-up, such as 15 min <input id="warm-up" autocomplete="off"></label>
      <button type="submit">These are set: go on</button>
    </form>

    <div id="bench" class="bench">
      <section class="typing" aria-labelledby="which">
        <form id="typing-form" autocomplete="off">
          <p class="place">
            <strong id="which"></strong>
            <button type="button" id="run-back">Clip before</button>
            <button type="button" id="run-on">Next clip</button>
            <button type="button" id="cancel" hidden>Leave as it was</button>
          </p>
          <div class="pair">
            <div>
              <canvas id="zoom-source" width="480" height="160" aria-hidden="true"></canvas>
              <label id="first-label" for="first">Timer</label>
              <input id="first" inputmode="numeric" aria-describedby="latency">
            </div>
            <div id="second-part">
              <div id="zoom-second"><canvas id="zoom-shown" width="480" height="160" aria-hidden="true"></canvas></div>
              <label id="second-label" for="second">Display</label>
              <input id="second" inputmode="numeric" aria-describedby="latency">
            </div>
          </div>
          <p id="latency" class="latency" role="status"></p>
          <p class="acts">
            <button type="submit" class="main">Save <kbd>Enter</kbd></button>
            <button type="button" id="undo" disabled>Undo <kbd>u</kbd></button>
          </p>
          <p class="acts">
            <button type="button" id="cannot">Cannot read <kbd>*</kbd></button>
            <label>because <select id="reason"></select></label>
            <input id="own-reason" aria-label="Another reason" hidden>
          </p>
          <p id="format-part"><label>The timer shows times as <input id="format" class="short" autocomplete="off"></label></p>
        </form>
      </section>

      <section class="clip" aria-labelledby="clip-name">
        <h3 id="clip-name">Clip</h3>
        <p><label>Open a clip of this machine; it is sent nowhere <input type="file" id="clip-file" accept="video/*,.mkv,.mov"></label></p>
        <p id="clip-says"></p>
        <div id="picture" hidden>
          <div class="frame">
            <canvas id="frame" tabindex="0" role="img" aria-labelledby="clip-name place"></canvas>
            <span id="outline-source" class="outline">timer</span>
            <span id="outline-shown" class="outline">display</span>
          </div>
          <p id="place" class="stamp"></p>
          <input type="range" id="slider" min="0" value="0" aria-label="Frame">
          <p class="acts">
            <button type="button" id="moment-back">Moment before</button>
            <button type="button" id="step-back">Frame before <kbd>−</kbd></button>
            <button type="button" id="play" aria-pressed="false">Play <kbd>space</kbd></button>
            <button type="button" id="step-on">Next frame <kbd>+</kbd></button>
            <button type="button" id="moment-on">Next moment <kbd>.</kbd></button>
          </p>
          <p class="acts">
            <label><input type="checkbox" id="slow" checked> play at a quarter of the speed</label>
            <label><input type="checkbox" id="go-on" checked> after saving, go to the next moment</label>
          </p>
          <details>
            <summary>Regions to enlarge</summary>
            <p>Drag across the picture from left to right, or type shares of its width and height in per cent.</p>
            <fieldset class="fields">
              <legend>Dragging sets the region of</legend>
              <label><input type="radio" name="draw" checked> the timer</label>
              <label><input type="radio" name="draw" id="draw-shown"> the display</label>
            </fieldset>
            ${regionFields('source', 'Timer')}
            ${regionFields('shown', 'Display')}
          </details>
        </div>
      </section>
    </div>

    <section id="results" aria-labelledby="results-name">
      <h3 id="results-name">So far</h3>
      <p id="total" class="total"></p>
      <p id="coverage"></p>
      <p id="progress"></p>
      <p id="advice"></p>
      <p id="agreement"></p>
      <ul id="clips"></ul>
      <h3>Worth knowing</h3>
      <p id="nothing-found">Nothing a build would remark on.</p>
      <ul id="findings" class="findings"></ul>
      <h3>Readings, the latest first</h3>
      <table>
        <thead><tr id="readings-head"></tr></thead>
        <tbody id="readings"></tbody>
      </table>
    </section>

    <details class="keys">
      <summary>Keys</summary>
      <dl>
        <div><dt><kbd>0</kbd>–<kbd>9</kbd></dt><dd>the digits of a time; what stands between them is written by itself</dd></div>
        <div><dt><kbd>Enter</kbd></dt><dd>to the other field, then save</dd></div>
        <div><dt><kbd>+</kbd> <kbd>−</kbd></dt><dd>next frame, frame before (on the picture also the arrows)</dd></div>
        <div><dt><kbd>.</kbd></dt><dd>to the next suggested moment (also page down; page up goes back)</dd></div>
        <div><dt><kbd>*</kbd></dt><dd>this one cannot be read: the row is kept with the reason</dd></div>
        <div><dt><kbd>/</kbd></dt><dd>another reason</dd></div>
        <div><dt><kbd>n</kbd></dt><dd>next clip</dd></div>
        <div><dt><kbd>u</kbd></dt><dd>undo the last change; its digits stand in the fields again (also control and z)</dd></div>
        <div><dt><kbd>space</kbd></dt><dd>play, stop</dd></div>
        <div><dt><kbd>Escape</kbd></dt><dd>leave a reading as it was</dd></div>
      </dl>
    </details>
  </section>
</main>
</body>
</html>
`;
}

function regionFields(name: string, label: string): string {
  const field = (part: string, says: string): string =>
    `<label>${says} <input type="number" class="short" id="${name}-${part}" min="0" max="100" step="1"></label>`;
  return `<fieldset class="fields"><legend>${label}</legend>${field('x', 'from the left')}${field('y', 'from the top')}${field('w', 'width')}</fieldset>`;
}
