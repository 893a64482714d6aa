//go:build unix

package main

import (
	"syscall"
	"time"
)

// processor is how long the cores have worked for this process, all together: other
// work on the machine does not count.
func processor() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return time.Since(begin)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
