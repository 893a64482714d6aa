package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
)

// newMode are the permissions of a new file, before the user's mask.
const newMode fs.FileMode = 0o666

// file is one file that is to be written: its name in a folder, all of its bytes
// and its permissions.
type file struct {
	name string
	data []byte
	mode fs.FileMode
}

// putAll makes a folder, if it is not there, and puts the files into it.
func putAll(dir string, files []file) error {
	if err := makeFolder(dir); err != nil {
		return err
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return fmt.Errorf("the folder %s cannot be opened: %w", dir, plain(err))
	}
	defer root.Close()
	if err := put(root, files); err != nil {
		return fmt.Errorf("nothing was written in %s: %w", dir, plain(err))
	}
	return nil
}

// makeFolder makes a folder and those that it stands in, if they are not there.
func makeFolder(dir string) error {
	if err := refuseFolder(dir); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", dir, plain(err))
	}
	return nil
}

// refuseFolder refuses what cannot take files, or would lead them to a place that
// nobody named.
func refuseFolder(dir string) error {
	st, err := os.Lstat(filepath.Clean(dir))
	switch {
	case err != nil: // not there yet
	case st.Mode()&fs.ModeSymlink != 0:
		return fmt.Errorf("%s is a link; name the folder that it leads to", dir)
	case !st.IsDir():
		return fmt.Errorf("%s is a file; the booklet needs a folder", dir)
	}
	return nil
}

// put writes the files beside where they belong, safe on the disk, and moves them
// into place when all of them are there. If anything fails before that, what was
// there stays as it was. An interruption waits until it is over.
func put(root *os.Root, files []file) (err error) {
	defer holdInterrupts()()
	var beside []string
	defer func() {
		for _, b := range beside {
			_ = root.Remove(b) // gone already, if it was moved
		}
	}()
	for _, f := range files {
		if err := refuseName(root, f.name); err != nil {
			return err
		}
		b := fmt.Sprintf(".seamwarden-%x.tmp", rand.Uint64())
		if err := writeNew(root, b, f, &beside); err != nil {
			return err
		}
	}
	for i, f := range files {
		if err := root.Rename(beside[i], f.name); err != nil {
			return err
		}
	}
	syncFolder(root)
	return nil
}

// refuseName refuses a name under which no file could be put in the end.
func refuseName(root *os.Root, name string) error {
	if name != filepath.Base(name) {
		return fmt.Errorf("%q is no plain file name", name)
	}
	st, err := root.Lstat(name)
	switch {
	case err == nil && st.IsDir():
		return fmt.Errorf("there is a folder with the name %s", name)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return err
	}
	return nil
}

// writeNew writes a file under a name that is not taken, and notes the name.
func writeNew(root *os.Root, name string, f file, made *[]string) error {
	w, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, f.mode)
	if err != nil {
		return err
	}
	*made = append(*made, name)
	if f.mode != newMode {
		err = w.Chmod(f.mode) // whatever the user's mask
	}
	if err == nil {
		_, err = w.Write(f.data)
	}
	if err == nil {
		err = w.Sync()
	}
	return errors.Join(err, w.Close())
}

// syncFolder makes the new names last through a power cut. Some systems cannot;
// the files are whole there all the same.
func syncFolder(root *os.Root) {
	if d, err := root.Open("."); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}

// holdInterrupts keeps the program from being stopped until the function that it
// gives is called.
func holdInterrupts() (release func()) {
	c := make(chan os.Signal, 1)
	signal.Notify(c, os.Interrupt, syscall.SIGTERM)
	return func() { signal.Stop(c) }
}
