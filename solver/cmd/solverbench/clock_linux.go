package main

import (
	"syscall"
	"time"
	"unsafe"
)

// threadTime is the processor time that this thread has used.
func threadTime() (time.Duration, bool) {
	const thisThread = 3 // CLOCK_THREAD_CPUTIME_ID of clock_gettime(2)
	var t syscall.Timespec
	if _, _, errno := syscall.Syscall(syscall.SYS_CLOCK_GETTIME, thisThread, uintptr(unsafe.Pointer(&t)), 0); errno != 0 {
		return 0, false
	}
	return time.Duration(t.Nano()), true
}
