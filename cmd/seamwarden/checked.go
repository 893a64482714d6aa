package main

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// checked is what came out of one folder. It holds no more than what is printed,
// so that a thousand of them stay small.
type checked struct {
	dir      string
	also     []string // rules that were asked for
	findings []finding.Finding
	accepted []finding.Accepted
	sources  map[string]string // of the files that the findings point into
	counts   counts
	mended   []mended
	left     []string // why files that have changes to make were left alone
	failed   error
}

// counts says how many of each kind there are in a folder.
type counts struct{ found, advice, unchecked, accepted int }

func countsOf(r *compiler.Result) (c counts) {
	c.found, c.advice, c.unchecked = finding.Counts(r.Findings)
	c.accepted = len(r.Accepted)
	return
}

// checkFolder compiles a folder; with fix it first makes the changes that are
// certain.
func checkFolder(dir string, fix bool, also ...string) *checked {
	c := &checked{dir: dir, also: also}
	var r *compiler.Result
	if fix {
		r, c.failed = c.mend()
	} else {
		r, c.failed = compile(dir, also...)
	}
	if r == nil {
		return c
	}
	c.findings, c.accepted, c.counts = r.Findings, r.Accepted, countsOf(r)
	c.sources = pointedInto(r)
	return c
}

// pointedInto keeps the sources that findings point into.
func pointedInto(r *compiler.Result) map[string]string {
	keep := map[string]string{}
	take := func(f finding.Finding) {
		keep[f.Place.File] = r.Sources[f.Place.File]
		for _, p := range f.Related {
			keep[p.File] = r.Sources[p.File]
		}
		for _, e := range f.Edits {
			keep[e.Span.File] = r.Sources[e.Span.File]
		}
	}
	for _, f := range r.Findings {
		take(f)
	}
	for _, a := range r.Accepted {
		take(a.Finding)
		keep[a.By.At.File] = r.Sources[a.By.At.File]
	}
	return keep
}

// folders gives the folders that are meant: each that is named, or, if it is no
// pattern, the patterns right inside it; this one, if none is named.
func folders(args []string) (all []string) {
	if len(args) == 0 {
		args = []string{"."}
	}
	for _, dir := range args {
		dir = filepath.Clean(dir)
		inside := []string{dir}
		if !isPattern(dir) {
			if list := patternsIn(dir); len(list) > 0 {
				inside = list
			}
		}
		all = append(all, inside...)
	}
	return
}

// patternsIn lists the patterns in the folders right inside a folder, by name.
// Hidden folders and links are passed by.
func patternsIn(dir string) (all []string) {
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if sub := filepath.Join(dir, e.Name()); e.IsDir() && !strings.HasPrefix(e.Name(), ".") && isPattern(sub) {
			all = append(all, sub)
		}
	}
	return
}

// inOrder does something for every name, as many at a time as there are
// processors, and hands what comes out on in the order of the names. No more is
// begun than a little ahead of what was handed on, so that little is kept.
func inOrder[T any](names []string, do func(string) T, give func(int, T)) {
	workers := runtime.GOMAXPROCS(0)
	if workers > len(names) {
		workers = len(names)
	}
	results := make([]chan T, len(names))
	for n := range results {
		results[n] = make(chan T, 1)
	}
	faults := make(chan any, len(names))
	next := make(chan int, workers) // its room bounds how far ahead work is begun
	for range workers {
		go func() {
			for n := range next {
				func() {
					defer func() {
						if fault := recover(); fault != nil {
							faults <- carried{fault, faultPlace()}
							close(results[n])
						}
					}()
					results[n] <- do(names[n])
				}()
			}
		}()
	}
	begun := 0
	for n := range names {
		for ; begun < len(names) && begun < n+2*workers; begun++ {
			next <- begun
		}
		result, ok := <-results[n]
		if !ok {
			panic(<-faults)
		}
		give(n, result)
		results[n] = nil
	}
	close(next)
}
