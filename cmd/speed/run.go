package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"time"
)

// cost is what one run took.
type cost struct {
	clock, processor time.Duration
	memory           int64 // KB, at the most
}

// turns runs two commands in turn and gives the median of each.
func turns(runs int, a, b []string) (ours, theirs cost, err error) {
	var as, bs []cost
	for range runs {
		x, err := once(a)
		if err != nil {
			return ours, theirs, err
		}
		y, err := once(b)
		if err != nil {
			return ours, theirs, err
		}
		as, bs = append(as, x), append(bs, y)
	}
	return median(as), median(bs), nil
}

// once runs a command; findings are no failure.
func once(args []string) (c cost, err error) {
	cmd := exec.Command(args[0], args[1:]...)
	begin := time.Now()
	err = cmd.Run()
	c.clock = time.Since(begin)
	var exit *exec.ExitError
	if err != nil && (!errors.As(err, &exit) || exit.ExitCode() != 1) {
		return c, fmt.Errorf("%s: %w", strings.Join(args, " "), err)
	}
	state := cmd.ProcessState
	c.processor = state.UserTime() + state.SystemTime()
	if use, ok := state.SysUsage().(*syscall.Rusage); ok {
		c.memory = int64(use.Maxrss)
	}
	return c, nil
}

func median(list []cost) cost {
	mid := func(of func(cost) int64) int64 {
		all := make([]int64, len(list))
		for i, c := range list {
			all[i] = of(c)
		}
		slices.Sort(all)
		return all[len(all)/2]
	}
	return cost{time.Duration(mid(func(c cost) int64 { return int64(c.clock) })), time.Duration(mid(func(c cost) int64 { return int64(c.processor) })),
		mid(func(c cost) int64 { return c.memory })}
}

func tell(what string, c cost) {
	fmt.Printf("%-40s %9.1f ms %9.1f ms %7.1f MB\n", what, ms(c.clock), ms(c.processor), float64(c.memory)/1024)
}

func ratio(a, b cost) {
	fmt.Printf("%-40s %9.2f    %9.2f\n\n", "  times as long", ms(a.clock)/ms(b.clock), ms(a.processor)/ms(b.processor))
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

// build makes the program as it is released: without the C library, which nothing
// here needs and which every start would load.
func build(dir string) (string, error) {
	tool := filepath.Join(dir, "seamwarden")
	cmd := exec.Command("go", "build", "-o", tool, "./cmd/seamwarden")
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	cmd.Stderr = os.Stderr
	return tool, cmd.Run()
}

// pattern is a sample: how many lines and files its source has, and how many bytes
// all its files.
type pattern struct {
	dir                 string
	lines, files, bytes int
}

func measured(dir string) (p pattern, err error) {
	p.dir = dir
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		if filepath.Ext(path) == ".seam" {
			p.lines += strings.Count(string(data), "\n")
		}
		p.files++
		p.bytes += len(data)
		return err
	})
	return p, err
}

func largestIn(samples string) (pattern, error) {
	entries, err := os.ReadDir(samples)
	var all []pattern
	for _, e := range entries {
		if p, err := measured(filepath.Join(samples, e.Name())); err == nil && p.lines > 0 {
			all = append(all, p)
		}
	}
	if err != nil || len(all) == 0 {
		return pattern{}, fmt.Errorf("there is no sample in %s: %w", samples, errors.Join(err, fs.ErrNotExist))
	}
	return slices.MaxFunc(all, func(a, b pattern) int { return cmp.Compare(a.lines, b.lines) }), nil
}

// goFile writes a Go file that is just large enough: the beginning of a file of the
// standard library, up to the end of a declaration.
func goFile(to string, enough func(lines, bytes int) bool) error {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	src, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "src", "net", "http", "server.go"))
	if err != nil {
		return err
	}
	lines, size := 0, 0
	for line := range strings.Lines(string(src)) {
		lines, size = lines+1, size+len(line)
		if enough(lines, size) && strings.TrimRight(line, "\n") == "}" {
			return os.WriteFile(to, src[:size], 0o666)
		}
	}
	return errors.New("no Go file of the standard library is large enough")
}

func copies(dir string, many int, enough func(lines, bytes int) bool) error {
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	first := filepath.Join(dir, "f0000.go")
	if err := goFile(first, enough); err != nil {
		return err
	}
	src, err := os.ReadFile(first)
	for n := 1; n < many && err == nil; n++ {
		err = os.WriteFile(filepath.Join(dir, fmt.Sprintf("f%04d.go", n)), src, 0o666)
	}
	return err
}
