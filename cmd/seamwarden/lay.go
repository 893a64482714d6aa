package main

import (
	"errors"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/compiler/lay/lock"
)

// laying is what `lay` is asked for.
type laying struct {
	seconds float64
	shard   string
	merge   []string
}

func newLay() *cobra.Command {
	o := &laying{}
	cmd := &cobra.Command{
		Use:   "lay [DIR...]",
		Short: "Find how the pieces lie on the cloth, and how much of it is needed",
		Long: "Lay looks for the shortest way to lay the pieces of each pattern on its cloth: for\n" +
			"every fabric and interfacing whose pieces have outlines, in every width and size, and\n" +
			"for all garments from which different parts are cut. It prints what it found and keeps\n" +
			"it in the file " + compiler.LaysFile + " of the pattern's folder, from which check and build take it.\n\n" +
			"What is remembered is where it begins, so no lay becomes longer: run it again, with\n" +
			"more --seconds, and it may find shorter ones. Ctrl-C ends it and keeps what was found.\n\n" +
			"--shard 2/3 looks for the second third of all lays of all the folders, so that three\n" +
			"machines can share the work. --merge takes over the lays of a file that another machine\n" +
			"made; with --seconds 0 nothing else is looked for.\n\n" +
			"It ends with status 1 if something cannot be laid.",
		Example: "  seamwarden lay samples/market-apron\n  seamwarden lay --seconds 20 samples\n" +
			"  seamwarden lay --shard 1/4 catalogue\n  seamwarden lay --seconds 0 --merge lays-2.lock tote",
		ValidArgsFunction: completeFolders,
		RunE: func(cmd *cobra.Command, args []string) error {
			r, err := o.settle()
			if err != nil {
				return err
			}
			return layAll(cmd, folders(args), o, r)
		},
	}
	f := cmd.Flags()
	f.Float64Var(&o.seconds, "seconds", 1, "how long to look for each lay, about, in `seconds` of one processor")
	f.StringVar(&o.shard, "shard", "", "the part of the work that is done here, as `PART/OF`")
	f.StringSliceVar(&o.merge, "merge", nil, "a `file` of lays to take over; for one folder")
	return cmd
}

// settle reads the flags.
func (o *laying) settle() (r compiler.Renewal, err error) {
	const most = 24 * 3600
	if !(o.seconds >= 0 && o.seconds <= most) {
		return r, fmt.Errorf("--seconds takes a number from 0 to %d", most)
	}
	r.Seconds = o.seconds
	if o.shard == "" {
		return r, nil
	}
	part, of, ok := strings.Cut(o.shard, "/")
	r.Shard, err = strconv.Atoi(part)
	var second error
	r.Shards, second = strconv.Atoi(of)
	if !ok || err != nil || second != nil || r.Shard < 1 || r.Shard > r.Shards {
		return r, fmt.Errorf("--shard takes a part and how many there are, such as 1/3, not %q", o.shard)
	}
	return r, nil
}

// layAll finds the lays of all patterns together, so that every processor has work.
func layAll(cmd *cobra.Command, dirs []string, o *laying, r compiler.Renewal) error {
	if len(o.merge) > 0 && len(dirs) != 1 {
		return errors.New("--merge is for one folder")
	}
	var patterns []*layPattern
	var worst error
	for _, dir := range dirs {
		p, err := openLays(cmd, dir, o.merge)
		if err != nil {
			fmt.Fprintf(cmd.ErrOrStderr(), "seamwarden: %v\n", err)
			worst = errFailed
			continue
		}
		patterns = append(patterns, p)
	}
	stopped := watchInterrupt()
	r.Stop = stopped.Load
	outcomes, files, err := renew(cmd, patterns, r)
	if err != nil {
		return err
	}
	for i, p := range patterns {
		err := p.finish(cmd, outcomes[i], files[i])
		switch {
		case errors.Is(err, errFound):
			worst = errors.Join(worst, err)
		case err != nil:
			fmt.Fprintf(cmd.ErrOrStderr(), "seamwarden: %v\n", err)
			worst = errFailed
		}
	}
	if stopped.Load() {
		fmt.Fprintln(cmd.ErrOrStderr(), "It was stopped; what was found until then is kept.")
	}
	return worst
}

// renew looks for the lays, with a line on the terminal.
func renew(cmd *cobra.Command, patterns []*layPattern, r compiler.Renewal) ([][]compiler.Laid, []*lock.File, error) {
	p := newProgress(cmd, bar)
	defer p.end()
	r.Progress = p.done
	var lays []*compiler.Lays
	for _, one := range patterns {
		lays = append(lays, one.lays)
	}
	return compiler.Renew(lays, r)
}

// bar draws how much is done.
func bar(n, of int) string {
	const wide = 30
	done := n * wide / of
	return fmt.Sprintf("[%s%s] %d of %d lays", strings.Repeat("#", done), strings.Repeat(".", wide-done), n, of)
}

// watchInterrupt says whether the work is to end. A second interruption ends the
// program at once.
func watchInterrupt() *atomic.Bool {
	var stopped atomic.Bool
	c := make(chan os.Signal, 1)
	signal.Notify(c, os.Interrupt, syscall.SIGTERM)
	go func() {
		<-c
		signal.Stop(c)
		stopped.Store(true)
	}()
	return &stopped
}

// layPattern is a pattern whose lays are looked for.
type layPattern struct {
	dir    string
	result *compiler.Result
	lays   *compiler.Lays
}

// openLays reads a pattern and takes over what other machines found.
func openLays(cmd *cobra.Command, dir string, merge []string) (*layPattern, error) {
	r, err := compile(dir)
	if err != nil {
		return nil, err
	}
	if r.Unread > 0 {
		_ = announce(cmd, dir, r)
		return nil, fmt.Errorf("%s: nothing is laid while a part of the pattern cannot be read", label(dir))
	}
	p := &layPattern{dir, r, r.Lays()}
	for _, name := range merge {
		src, err := os.ReadFile(name)
		if err != nil {
			return nil, fmt.Errorf("%s cannot be read: %w", name, plain(err))
		}
		for _, problem := range p.lays.Merge(filepath.Base(name), src) {
			fmt.Fprintf(cmd.ErrOrStderr(), "%s: %s\n", name, problem)
		}
	}
	return p, nil
}

// finish prints what came out and writes the file, if it differs.
func (p *layPattern) finish(cmd *cobra.Command, outcome []compiler.Laid, f *lock.File) error {
	out := cmd.OutOrStdout()
	if len(p.lays.Wanted) == 0 && len(p.lays.Not) == 0 {
		fmt.Fprintf(out, "%s: nothing is laid, since no piece has an outline.\n", label(p.dir))
		return nil
	}
	fmt.Fprintln(out, p.dir)
	err := layTable(out, p.result.Pattern, p.lays, outcome)
	if src := f.Encode(); len(f.Entries) > 0 && string(src) != p.result.Sources[compiler.LaysFile] {
		if err := putAll(p.dir, []file{{compiler.LaysFile, src, newMode}}); err != nil {
			return err
		}
	}
	return err
}
