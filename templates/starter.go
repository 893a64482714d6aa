package templates

import "embed"

// Starter holds the pattern that a new folder begins with (starter/pattern.seam
// and the files that it names). It checks and builds as it stands.
//
//go:embed starter
var Starter embed.FS
