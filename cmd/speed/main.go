// Command speed compares the time of a check with that of gofmt, which everybody
// who writes Go has felt: one pattern in a fresh process beside one Go file, and a
// thousand patterns beside a thousand files.
//
// In: the project, from whose folder it is run, and a Go toolchain. Out: a table of
// medians and their ratios. Runs of the two take turns, so that a busy machine
// slows both; the ratio of processor time is steadier than that of the clock.
//
//	go run ./cmd/speed
//	go run ./cmd/speed -runs 21 -many 1000
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	runs := flag.Int("runs", 15, "how often one pattern is checked")
	many := flag.Int("many", 1000, "how many patterns are checked at once")
	samples := flag.String("samples", "samples", "the `folder` of the samples")
	flag.Parse()
	if err := compare(*runs, *many, *samples); err != nil {
		fmt.Fprintln(os.Stderr, "speed:", err)
		os.Exit(1)
	}
}

// compare makes both comparisons in a folder of its own.
func compare(runs, many int, samples string) error {
	dir, err := os.MkdirTemp("", "speed")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	tool, err := build(dir)
	if err != nil {
		return err
	}
	largest, err := largestIn(samples)
	if err != nil {
		return err
	}
	skirt, err := measured(filepath.Join(samples, "dusk-skirt"))
	if err != nil {
		return err
	}
	fmt.Println("                                             clock       processor   memory")
	if err := cold(dir, tool, largest, runs); err != nil {
		return err
	}
	return crowd(dir, tool, skirt, many, max(3, runs/5))
}

// cold compares one pattern with one Go file of as many lines, each in a fresh
// process.
func cold(dir, tool string, p pattern, runs int) error {
	file := filepath.Join(dir, "cold.go")
	if err := goFile(file, func(lines, _ int) bool { return lines >= p.lines }); err != nil {
		return err
	}
	ours, theirs, err := turns(runs, []string{tool, "check", p.dir}, []string{"gofmt", "-l", file})
	if err != nil {
		return err
	}
	name := filepath.Base(p.dir)
	tell(fmt.Sprintf("check %s (%d lines, %d files)", name, p.lines, p.files), ours)
	tell(fmt.Sprintf("gofmt of a file of %d lines", p.lines), theirs)
	ratio(ours, theirs)
	return nil
}

// crowd compares many copies of a pattern in one process with as many Go files: of
// as many lines as its source, and of as many bytes as all its files.
func crowd(dir, tool string, p pattern, many, runs int) error {
	patterns := filepath.Join(dir, "patterns")
	for n := range many {
		if err := os.CopyFS(filepath.Join(patterns, fmt.Sprintf("p%04d", n)), os.DirFS(p.dir)); err != nil {
			return err
		}
	}
	for _, c := range []struct {
		name   string
		enough func(lines, bytes int) bool
	}{
		{fmt.Sprintf("%d lines each", p.lines), func(lines, _ int) bool { return lines >= p.lines }},
		{fmt.Sprintf("%d KB each", p.bytes>>10), func(_, bytes int) bool { return bytes >= p.bytes }},
	} {
		files := filepath.Join(dir, "files")
		if err := copies(files, many, c.enough); err != nil {
			return err
		}
		ours, theirs, err := turns(runs, []string{tool, "check", patterns}, []string{"gofmt", "-l", files})
		if err != nil {
			return err
		}
		tell(fmt.Sprintf("check %d times %s", many, filepath.Base(p.dir)), ours)
		tell(fmt.Sprintf("gofmt of %d files, %s", many, c.name), theirs)
		ratio(ours, theirs)
		if err := os.RemoveAll(files); err != nil {
			return err
		}
	}
	return nil
}
