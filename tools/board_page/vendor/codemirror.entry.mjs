export {EditorState, Compartment, Annotation} from "@codemirror/state";
export {EditorView, keymap, lineNumbers, drawSelection, highlightActiveLine, highlightActiveLineGutter, highlightSpecialChars} from "@codemirror/view";
export {defaultKeymap, history, historyKeymap, indentWithTab} from "@codemirror/commands";
export {autocompletion, completionKeymap} from "@codemirror/autocomplete";
export {linter, lintGutter, setDiagnostics} from "@codemirror/lint";
export {StreamLanguage, syntaxHighlighting, HighlightStyle, indentUnit} from "@codemirror/language";
export {yaml} from "@codemirror/legacy-modes/mode/yaml";
export {tags} from "@lezer/highlight";
