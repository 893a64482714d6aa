package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"seamwarden/compiler"
	"seamwarden/templates"
)

// starterTitle is the title of the starter pattern as it lies in the program.
const starterTitle = `"Starter Tote"`

func newInit() *cobra.Command {
	return &cobra.Command{
		Use:   "init NAME",
		Short: "Begin a pattern in a new folder",
		Long: "Init makes a folder and puts a small pattern into it that checks and builds as it\n" +
			"is: a tote bag, with notes that say what each part is for. Change it bit by\n" +
			"bit into your own. The title is made from the folder's name.\n\n" +
			"A folder that has anything in it is left alone.",
		Example: "  seamwarden init river-tote",
		Args:    takes(1, 1, "the name of the new folder"),
		RunE:    func(cmd *cobra.Command, args []string) error { return begin(cmd, args[0]) },
	}
}

// begin makes the folder and its files, or leaves nothing behind.
func begin(cmd *cobra.Command, name string) error {
	dir, err := freshFolder(name)
	if err != nil {
		return err
	}
	made, err := newFolder(dir)
	if err != nil {
		return err
	}
	files, err := fill(dir, &made)
	if err != nil {
		for i := range made {
			_ = os.Remove(made[len(made)-1-i])
		}
		return err
	}
	for _, f := range files {
		fmt.Fprintln(cmd.OutOrStdout(), f)
	}
	fmt.Fprintf(cmd.ErrOrStderr(), "Open %s and read its notes. Then try: seamwarden build %s\n", filepath.Join(dir, compiler.Root), dir)
	return nil
}

// fill copies the starter pattern into a folder and gives the files. made notes
// everything that was made, in that order.
func fill(dir string, made *[]string) (files []string, err error) {
	err = fs.WalkDir(templates.Starter, "starter", func(from string, d fs.DirEntry, err error) error {
		if err != nil || from == "starter" {
			return err
		}
		to := filepath.Join(dir, filepath.FromSlash(strings.TrimPrefix(from, "starter/")))
		if d.IsDir() {
			err = os.Mkdir(to, 0o777)
		} else {
			err = copyStarter(from, to, dir)
			files = append(files, to)
		}
		if err != nil {
			return fmt.Errorf("%s cannot be made: %w", to, plain(err))
		}
		*made = append(*made, to)
		return nil
	})
	return files, err
}

// freshFolder cleans the name of a folder and refuses one that is in use.
func freshFolder(name string) (string, error) {
	if strings.TrimSpace(name) == "" || strings.ContainsFunc(name, unicode.IsControl) {
		return "", errors.New("init needs a name for the new folder, such as river-tote")
	}
	dir := filepath.Clean(name)
	entries, err := os.ReadDir(dir)
	switch {
	case err == nil && len(entries) > 0:
		return "", fmt.Errorf("the folder %s has files in it and was left alone; take a new name", dir)
	case err == nil || errors.Is(err, fs.ErrNotExist):
		return dir, nil
	}
	if _, there := os.Lstat(dir); there == nil {
		return "", fmt.Errorf("%s is there and is no folder; take a new name", dir)
	}
	return "", fmt.Errorf("the folder %s cannot be made: %w", dir, plain(err))
}

// newFolder makes a folder, if it is not there, and gives what it made. The
// folder that it stands in must be there: a slip in its name would else begin a
// tree of folders.
func newFolder(dir string) (made []string, err error) {
	switch err = os.Mkdir(dir, 0o777); {
	case err == nil:
		return []string{dir}, nil
	case errors.Is(err, fs.ErrExist) && isFolder(dir):
		return nil, nil
	case errors.Is(err, fs.ErrExist):
		return nil, fmt.Errorf("%s is a link that leads nowhere; take a new name", dir)
	case errors.Is(err, fs.ErrNotExist) && !isFolder(filepath.Dir(dir)):
		parent := filepath.Dir(dir)
		return nil, meant(fmt.Sprintf("there is no folder %s to put it in", parent), nearestPath(parent))
	}
	return nil, fmt.Errorf("the folder %s cannot be made: %w", dir, plain(err))
}

func isFolder(dir string) bool {
	st, err := os.Stat(dir)
	return err == nil && st.IsDir()
}

// copyStarter writes one file of the starter pattern, with the title in it.
func copyStarter(from, to, dir string) error {
	data, err := fs.ReadFile(templates.Starter, from)
	if err != nil {
		return err
	}
	text := string(data)
	if path.Base(from) == compiler.Root {
		text = strings.Replace(text, starterTitle, `"`+titleFor(dir)+`"`, 1)
	}
	f, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, newMode)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	return errors.Join(err, f.Close())
}

// titleFor makes a title from the name of a folder: "river-tote" is "River Tote".
func titleFor(dir string) string {
	if whole, err := filepath.Abs(dir); err == nil {
		dir = whole
	}
	words := strings.FieldsFunc(filepath.Base(dir), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r) && r != '\'' && r != '’' && r != '&'
	})
	for i, w := range words {
		r := []rune(w)
		r[0] = unicode.ToTitle(r[0])
		words[i] = string(r)
	}
	if len(words) == 0 {
		return "My Pattern"
	}
	return strings.Join(words, " ")
}
