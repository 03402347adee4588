/** What people do to YAML that it cannot be read. The words are in `problem-text.ts`. */
export type YamlMistake =
  | 'open-quote'
  | 'after-quote'
  | 'colon'
  | 'no-blank'
  | 'no-colon'
  | 'under-value'
  | 'indent'
  | 'tab'
  | 'first-character'
  | 'escape'
  | 'open-bracket'
  | 'closing-bracket'
  | 'no-comma'
  | 'comma'
  | 'dash'
  | 'other';
