package templates

import "embed"

// HTML holds the page templates (html/*.html, in the language of html/template)
// and the style sheet (html/style.css) of the web booklet.
//
//go:embed html
var HTML embed.FS
