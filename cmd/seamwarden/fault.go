package main

import (
	"fmt"
	"runtime"
	"strings"
)

// carried is a fault that was caught where it happened, beside the main line of
// work, with its place.
type carried struct {
	fault any
	place string
}

// faultText tells of a fault in the program: what broke, where, in which version.
func faultText(fault any) string {
	place := faultPlace()
	if c, ok := fault.(carried); ok {
		fault, place = c.fault, c.place
	}
	return fmt.Sprintf("seamwarden: this is a fault in seamwarden %s, not in your pattern.\n"+
		"  It says: %v\n  %s\n"+
		"Please report it with these lines and, if you may, with the pattern.\n", versionText(), fault, place)
}

// faultPlace finds the line of our own that a panic came from.
func faultPlace() string {
	pcs := make([]uintptr, 64)
	frames := runtime.CallersFrames(pcs[:runtime.Callers(1, pcs)])
	panicked := false
	for {
		f, more := frames.Next()
		if panicked && (strings.HasPrefix(f.Function, "seamwarden/") || strings.HasPrefix(f.Function, "main.")) {
			name := f.Function[strings.LastIndex(f.Function, "/")+1:]
			return fmt.Sprintf("It came from %s, line %d.", name, f.Line)
		}
		panicked = panicked || f.Function == "runtime.gopanic"
		if !more {
			return "Where it came from is not known."
		}
	}
}
