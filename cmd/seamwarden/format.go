package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/aymanbagabas/go-udiff"
	"github.com/spf13/cobra"

	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// formatting is what `fmt` is asked for.
type formatting struct{ check, diff bool }

func newFormat() *cobra.Command {
	var o formatting
	cmd := &cobra.Command{
		Use:   "fmt FILE|DIR...",
		Short: "Set pattern sources in their one form",
		Long: "Fmt rewrites pattern sources (.seam) with the spacing and line breaks that\n" +
			"every pattern has, and prints the names of those that it changed. In a folder it\n" +
			"takes all sources, also of the folders inside. It changes no meaning and loses no\n" +
			"comment. A file with mistakes is not touched.\n\n" +
			"A hyphen stands for standard input: the result goes to standard output.\n\n" +
			"--check and --diff write nothing and end with status 1 if a file would change.",
		Example: "  seamwarden fmt tote\n  seamwarden fmt --check samples\n  seamwarden fmt --diff tote/pattern.seam\n  seamwarden fmt - < pattern.seam",
		Args:    takes(1, -1, "files or folders"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"seam"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return each(cmd, args, func(name string) error { return o.named(cmd, name) })
		},
	}
	cmd.Flags().BoolVar(&o.check, "check", false, "only list the files that would change")
	cmd.Flags().BoolVar(&o.diff, "diff", false, "only print how the files would change")
	return cmd
}

// named formats what a word on the command line names.
func (o formatting) named(cmd *cobra.Command, name string) error {
	if name == "-" {
		return o.stdin(cmd)
	}
	name = filepath.Clean(name)
	st, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return meant(fmt.Sprintf("there is no file or folder %s", name), nearestPath(name))
	case err != nil:
		return fmt.Errorf("%s cannot be opened: %w", name, plain(err))
	case st.IsDir():
		return o.folder(cmd, name)
	case filepath.Ext(name) != ".seam":
		return fmt.Errorf("%s is no pattern source; their names end in .seam", name)
	}
	return o.file(cmd, name)
}

// folder formats every source in a folder. Links and hidden folders are passed by.
func (o formatting) folder(cmd *cobra.Command, dir string) error {
	var names []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return fmt.Errorf("%s cannot be opened: %w", path, plain(err))
		case d.IsDir() && path != dir && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.Type().IsRegular() && filepath.Ext(path) == ".seam":
			names = append(names, path)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(names) == 0 {
		return fmt.Errorf("there is no pattern source in %s; their names end in .seam", label(dir))
	}
	return each(cmd, names, func(name string) error { return o.file(cmd, name) })
}

// file formats one file. A link is followed, and what it leads to is changed.
func (o formatting) file(cmd *cobra.Command, name string) error {
	path, err := filepath.EvalSymlinks(name)
	if err != nil {
		return fmt.Errorf("%s cannot be opened: %w", name, plain(err))
	}
	src, mode, err := readSource(path)
	if err != nil {
		return fmt.Errorf("%s cannot be read: %w", name, plain(err))
	}
	out, err := o.source(cmd, name, src)
	if err != nil || bytes.Equal(src, out) {
		return err
	}
	if o.check || o.diff {
		return errFound
	}
	if mode&0o200 == 0 {
		return fmt.Errorf("%s is write-protected and was not changed", name)
	}
	root, err := os.OpenRoot(filepath.Dir(path))
	if err == nil {
		defer root.Close()
		err = put(root, []file{{filepath.Base(path), out, mode}})
	}
	if err != nil {
		return fmt.Errorf("%s was not changed: %w", name, plain(err))
	}
	fmt.Fprintln(cmd.OutOrStdout(), name)
	return nil
}

// stdin formats standard input.
func (o formatting) stdin(cmd *cobra.Command) error {
	src, err := readUpTo(cmd.InOrStdin())
	if err != nil {
		return fmt.Errorf("standard input cannot be read: %w", plain(err))
	}
	out, err := o.source(cmd, "standard input", src)
	switch {
	case err != nil:
		return err
	case !o.check && !o.diff:
		_, err = cmd.OutOrStdout().Write(out)
		return err
	case !bytes.Equal(src, out):
		return errFound
	}
	return nil
}

// source gives the form of a text, and prints its name or the difference if that
// is asked for. A text with mistakes has none: they are printed.
func (o formatting) source(cmd *cobra.Command, name string, src []byte) ([]byte, error) {
	f := dsl.Parse(filepath.ToSlash(name), src)
	out, ok := dsl.Format(f)
	if found, _, _ := finding.Counts(f.Findings); found > 0 || !ok {
		w := &finding.Writer{Out: cmd.ErrOrStderr(), Sources: map[string]string{f.Name: f.Source}, Colour: coloured(cmd)}
		writeFindings(w, f.Findings, false)
		fmt.Fprintf(cmd.ErrOrStderr(), "%s: not formatted, since it has mistakes.\n", name)
		return nil, errFound
	}
	if bytes.Equal(src, out) {
		return out, nil
	}
	if o.diff {
		fmt.Fprint(cmd.OutOrStdout(), udiff.Unified(name+".orig", name, string(src), string(out)))
	} else if o.check {
		fmt.Fprintln(cmd.OutOrStdout(), name)
	}
	return out, nil
}

// readSource gives the bytes of a plain file and its permissions.
func readSource(path string) ([]byte, fs.FileMode, error) {
	st, err := os.Stat(path)
	if err != nil {
		return nil, 0, err
	}
	if !st.Mode().IsRegular() {
		return nil, 0, errNotPlain
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, 0, err
	}
	defer f.Close()
	src, err := readUpTo(f)
	return src, st.Mode().Perm(), err
}

// readUpTo reads all of a source, unless it is larger than any source.
func readUpTo(r io.Reader) ([]byte, error) {
	src, err := io.ReadAll(io.LimitReader(r, dsl.MaxSize+1))
	if err == nil && len(src) > dsl.MaxSize {
		return nil, fmt.Errorf("it has more than %d MB, and a source has at most that", dsl.MaxSize>>20)
	}
	return src, err
}
