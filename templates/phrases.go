package templates

import "embed"

// Phrases holds the table of sentences and labels of each language.
//
//go:embed phrases
var Phrases embed.FS
