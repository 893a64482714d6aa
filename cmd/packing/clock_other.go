//go:build !unix

package main

import "time"

// processor is the time of the wall where that of the cores is not told.
func processor() time.Duration { return time.Since(begin) }
