package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/spf13/cobra"
)

// The scripts run the command in this test program: `seamwarden` as it is, and
// `faulty`, which breaks on purpose.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"seamwarden": main,
		"faulty":     func() { os.Exit(run(faulty(), os.Args[1:])) },
	})
}

func TestScripts(t *testing.T) {
	samples, err := filepath.Abs("../../samples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("SAMPLES", samples)
			return nil
		},
		Condition: func(c string) (bool, error) {
			if c == "root" {
				return os.Geteuid() == 0, nil
			}
			return false, fmt.Errorf("the scripts know no condition %q", c)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": status, "holds": holds, "bigfile": bigfile, "bytes": bytesOf, "pipe": pipe, "deep": deep, "copies": copies,
		},
	})
}

// faulty is the command with one more, which indexes a list beyond its end.
func faulty() *cobra.Command {
	root := newRoot()
	root.AddCommand(&cobra.Command{Use: "break", RunE: func(*cobra.Command, []string) error {
		var none []string
		return errors.New(none[len(root.Commands())])
	}})
	return root
}

// status runs a command and demands an exit status: status 2 seamwarden check x.
// A program that broke down by itself never passes, whatever its status.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N command [args...]")
	}
	want, got := args[0], 0
	err := ts.Exec(args[1], args[2:]...)
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if printed := ts.ReadFile("stderr"); strings.Contains(printed, "goroutine ") {
		ts.Fatalf("the program broke down:\n%s", printed)
	}
	if strconv.Itoa(got) != want {
		ts.Fatalf("status %d, want %s", got, want)
	}
}

// holds demands that a folder has these files and folders and no others, hidden
// ones included: holds out a.html a.pdf.
func holds(ts *testscript.TestScript, neg bool, args []string) {
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	want := slices.Sorted(slices.Values(args[1:]))
	if slices.Equal(names, want) == neg {
		ts.Fatalf("%s holds %q, want %q", args[0], names, want)
	}
}

// bigfile makes a file of so many megabytes: bigfile pattern.seam 50.
func bigfile(ts *testscript.TestScript, _ bool, args []string) {
	mb, err := strconv.Atoi(args[1])
	ts.Check(err)
	line := strings.Repeat("x", 63) + "\n"
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Repeat(line, mb<<14)), 0o666))
}

// bytesOf writes a file from a Go string, for what cannot stand in a script.
func bytesOf(ts *testscript.TestScript, _ bool, args []string) {
	s, err := strconv.Unquote(`"` + args[1] + `"`)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(s), 0o666))
}

// pipe makes a named pipe, from which nothing ever comes.
func pipe(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(syscall.Mkfifo(ts.MkAbs(args[0]), 0o666))
}

// deep writes a file of so many opening signs and as many closing ones: deep
// pattern.seam 100000 { }.
func deep(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Repeat(args[2], n)+strings.Repeat(args[3], n)), 0o666))
}

// copies makes so many copies of a folder, whose names end in a number: copies good
// 40 shelf/g.
func copies(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	for i := range n {
		ts.Check(os.CopyFS(ts.MkAbs(fmt.Sprintf("%s%02d", args[2], i)), os.DirFS(ts.MkAbs(args[0]))))
	}
}
