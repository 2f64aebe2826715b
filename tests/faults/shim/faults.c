/* A disk that fails on purpose, for LD_PRELOAD: counts what is done to the files under one folder, and at the Nth deed ends the
 * process, cuts the power or fails the call; or has room for so many bytes only.
 *
 *   FAULT_FOLDER  it and what is under it is counted: creating, writing, truncating, syncing, renaming, removing
 *   FAULT_AT      the deed at which it happens, from 1
 *   FAULT_HOW     kill   half of a write is done, then SIGKILL: the process ends, the system does not
 *                 cut    SIGKILL, and everything that no fsync has promised is undone
 *                 torn   the same, but each such deed is undone or not by chance (of FAULT_AT)
 *                 eio, enospc   the call fails, once
 *   FAULT_BYTES   files may grow by so many bytes together; then ENOSPC, until the file FAULT_FREED is there
 *   FAULT_LIES    fsync says that it was done and promises nothing: a check of the check
 *   FAULT_TRASH   a folder of the same file system for what is removed and may come back
 *   FAULT_TALLY   gets the number of deeds when the process ends by itself
 *
 * What counts as promised: a file's content by fsync or fdatasync of the file, its name by fsync of its folder (fsync(2): "Calling
 * fsync() does not necessarily ensure that the entry in the directory containing the file has also reached disk"). What is written
 * through a mapping is not seen: SQLite maps only its -shm, which it makes anew (https://www.sqlite.org/walformat.html section 2).
 * The system is called directly, so that nothing here meets itself.
 */
#define _GNU_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <ftw.h>
#include <limits.h>
#include <pthread.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/types.h>
#include <sys/uio.h>
#include <unistd.h>

enum deed { WRITE, TRUNCATE, CREATE, FOLDER, RENAME, REMOVE };

/* What takes a deed back. Files are held open by number, because names change. */
struct undo {
    struct undo *before;
    enum deed deed;
    int promised, file;
    dev_t device;
    ino_t inode;
    off_t at, size, end; /* where it begins, how long the file was, and its end if this made it longer */
    size_t length;
    char *old, name[PATH_MAX], to[PATH_MAX], kept[PATH_MAX];
};

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static struct undo *last;
static const char *folder, *how, *freed, *trash;
static long at, deeds, room = -1, removed;
static int lies;

static long number(const char *name, long otherwise) { const char *text = getenv(name); return text ? atol(text) : otherwise; }

__attribute__((constructor)) static void begin(void) {
    folder = getenv("FAULT_FOLDER");
    how = getenv("FAULT_HOW");
    freed = getenv("FAULT_FREED");
    trash = getenv("FAULT_TRASH");
    at = number("FAULT_AT", 0);
    room = number("FAULT_BYTES", -1);
    lies = getenv("FAULT_LIES") != NULL;
}

__attribute__((destructor)) static void end(void) {
    const char *tally = getenv("FAULT_TALLY");
    if (!tally) return;
    char text[32];
    int length = snprintf(text, sizeof text, "%ld", deeds);
    int file = syscall(SYS_openat, AT_FDCWD, tally, O_WRONLY | O_CREAT | O_TRUNC, 0644);
    syscall(SYS_write, file, text, length);
    syscall(SYS_close, file);
}

static int is(const char *word) { return how && strcmp(how, word) == 0; }

static int cuts(void) { return is("cut") || is("torn"); }

static int under(const char *path) {
    size_t length = folder ? strlen(folder) : 0;
    return length && strncmp(path, folder, length) == 0 && (path[length] == 0 || path[length] == '/');
}

/* The name of what is open, if it is ours. */
static int ours(int fd, char *path) {
    char link[64];
    snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
    ssize_t length = syscall(SYS_readlinkat, AT_FDCWD, link, path, PATH_MAX - 1);
    if (length < 0) return 0;
    path[length] = 0;
    return under(path);
}

/* A name as the call gave it, made whole. */
static int named(int dir, const char *name, char *path) {
    if (name[0] == '/') {
        snprintf(path, PATH_MAX, "%s", name);
    } else if (dir == AT_FDCWD) {
        return 0;
    } else {
        char base[PATH_MAX];
        if (!ours(dir, base)) return 0;
        if (snprintf(path, PATH_MAX, "%s/%s", base, name) >= PATH_MAX) return 0;
    }
    return under(path);
}

static struct undo *note(enum deed deed) {
    struct undo *new = calloc(1, sizeof *new);
    new->deed = deed;
    new->before = last;
    new->file = -1;
    return last = new;
}

/* Opens anew what is open, to read what was there and to put it back; kept open for as long as the process lives. */
static void hold(struct undo *undo, int fd) {
    char link[64];
    struct stat now;
    snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
    syscall(SYS_fstat, fd, &now);
    undo->device = now.st_dev;
    undo->inode = now.st_ino;
    undo->size = now.st_size;
    for (struct undo *known = undo->before; known; known = known->before)
        if (known->file >= 0 && known->device == now.st_dev && known->inode == now.st_ino) {
            undo->file = known->file;
            return;
        }
    undo->file = syscall(SYS_openat, AT_FDCWD, link, O_RDWR | O_CLOEXEC, 0);
}

static void keep_old(struct undo *undo, off_t from, off_t to) {
    undo->at = from;
    undo->length = to > from ? to - from : 0;
    undo->old = malloc(undo->length + 1);
    if (syscall(SYS_pread64, undo->file, undo->old, undo->length, from) != (long)undo->length) abort();
}

static int gone(const char *path, const struct stat *s, int kind, struct FTW *f) {
    (void)s, (void)f;
    return syscall(SYS_unlinkat, AT_FDCWD, path, kind == FTW_DP ? AT_REMOVEDIR : 0);
}

static void take_back(struct undo *undo) {
    struct stat now;
    switch (undo->deed) {
    case WRITE:
        /* What was there, nothing where there was nothing, and the old end unless something later stands behind it. */
        syscall(SYS_fstat, undo->file, &now);
        syscall(SYS_pwrite64, undo->file, undo->old, undo->length, undo->at);
        if (undo->end) {
            if (now.st_size <= undo->end) {
                syscall(SYS_ftruncate, undo->file, undo->size);
            } else {
                off_t from = undo->at + undo->length;
                char *zeros = calloc(1, undo->end - from);
                syscall(SYS_pwrite64, undo->file, zeros, undo->end - from, from);
                free(zeros);
            }
        }
        break;
    case TRUNCATE:
        syscall(SYS_ftruncate, undo->file, undo->size);
        syscall(SYS_pwrite64, undo->file, undo->old, undo->length, undo->at);
        break;
    case CREATE:
        syscall(SYS_unlinkat, AT_FDCWD, undo->name, 0);
        break;
    case FOLDER:
        nftw(undo->name, gone, 8, FTW_DEPTH | FTW_PHYS);
        break;
    case RENAME:
        syscall(SYS_renameat2, AT_FDCWD, undo->to, AT_FDCWD, undo->name, 0);
        if (undo->kept[0]) syscall(SYS_renameat2, AT_FDCWD, undo->kept, AT_FDCWD, undo->to, 0);
        break;
    case REMOVE:
        syscall(SYS_renameat2, AT_FDCWD, undo->kept, AT_FDCWD, undo->name, 0);
        break;
    }
}

static void finish(void) {
    unsigned long chance = 88172645463325252UL ^ ((unsigned long)at << 20);
    if (cuts())
        for (struct undo *undo = last; undo; undo = undo->before) {
            chance ^= chance << 13, chance ^= chance >> 7, chance ^= chance << 17;
            if (!undo->promised && (is("cut") || chance >> 40 & 1)) take_back(undo);
        }
    syscall(SYS_kill, getpid(), SIGKILL);
}

/* Counts a deed. 0: do it; otherwise the error that it fails with. `now` is set if it is the last. */
static int due(int *now) {
    *now = 0;
    if (++deeds != at) return 0;
    if (is("eio")) return EIO;
    if (is("enospc")) return ENOSPC;
    *now = 1;
    return 0;
}

static int fail(int error) { errno = error; return -1; }

static void promised(const char *path, int fd) {
    struct stat now;
    syscall(SYS_fstat, fd, &now);
    for (struct undo *undo = last; undo; undo = undo->before) {
        int content = undo->deed == WRITE || undo->deed == TRUNCATE;
        const char *end = strrchr(undo->name, '/');
        size_t parent = end ? (size_t)(end - undo->name) : 0;
        if (content ? undo->inode == now.st_ino && undo->device == now.st_dev
                    : S_ISDIR(now.st_mode) && strlen(path) == parent && strncmp(path, undo->name, parent) == 0)
            undo->promised = 1;
    }
}

static int sync_as(long call, int fd) {
    char path[PATH_MAX];
    if (!ours(fd, path)) return syscall(call, fd);
    pthread_mutex_lock(&lock);
    int now, error = due(&now), done = -1;
    /* Killed before it: nothing is promised. */
    if (now) finish();
    if (!error) done = lies ? 0 : syscall(call, fd);
    if (!error && !lies && done == 0) promised(path, fd);
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}

int fsync(int fd) { return sync_as(SYS_fsync, fd); }
int fdatasync(int fd) { return sync_as(SYS_fdatasync, fd); }

static ssize_t write_as(int fd, const void *from, size_t length, off_t where, int placed) {
    char path[PATH_MAX];
    if (!ours(fd, path)) return placed ? syscall(SYS_pwrite64, fd, from, length, where) : syscall(SYS_write, fd, from, length);
    pthread_mutex_lock(&lock);
    int now, error = due(&now);
    struct stat found;
    syscall(SYS_fstat, fd, &found);
    if (!placed) where = syscall(SYS_lseek, fd, 0, fcntl(fd, F_GETFL) & O_APPEND ? SEEK_END : SEEK_CUR);
    off_t grows = where + (off_t)length - found.st_size;
    if (!error && room >= 0 && grows > 0 && !(freed && syscall(SYS_faccessat, AT_FDCWD, freed, F_OK) == 0)) {
        /* write(2): if there is room for a part only, a part is written. */
        if (grows > room) {
            long fits = (long)length - (grows - room);
            if (fits <= 0) error = ENOSPC;
            else length = fits;
            room = 0;
        } else {
            room -= grows;
        }
    }
    ssize_t done = -1;
    if (!error) {
        if (now && is("kill")) length /= 2;
        if (cuts()) {
            struct undo *undo = note(WRITE);
            hold(undo, fd);
            off_t to = where + (off_t)length;
            keep_old(undo, where, to < found.st_size ? to : found.st_size);
            if (to > found.st_size) undo->end = to;
        }
        done = placed ? syscall(SYS_pwrite64, fd, from, length, where) : syscall(SYS_write, fd, from, length);
        if (now) finish();
    }
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}

ssize_t write(int fd, const void *from, size_t length) { return write_as(fd, from, length, 0, 0); }
ssize_t pwrite(int fd, const void *from, size_t length, off_t where) { return write_as(fd, from, length, where, 1); }
ssize_t pwrite64(int fd, const void *from, size_t length, off_t where) { return write_as(fd, from, length, where, 1); }

static ssize_t vector_as(int fd, const struct iovec *parts, int count, off_t where, int placed) {
    size_t length = 0;
    for (int i = 0; i < count; i++) length += parts[i].iov_len;
    char *whole = malloc(length + 1), *to = whole;
    for (int i = 0; i < count; i++) to = mempcpy(to, parts[i].iov_base, parts[i].iov_len);
    ssize_t done = write_as(fd, whole, length, where, placed);
    free(whole);
    return done;
}

ssize_t writev(int fd, const struct iovec *parts, int count) { return vector_as(fd, parts, count, 0, 0); }
ssize_t pwritev(int fd, const struct iovec *parts, int count, off_t where) { return vector_as(fd, parts, count, where, 1); }
ssize_t pwritev64(int fd, const struct iovec *parts, int count, off_t where) { return vector_as(fd, parts, count, where, 1); }

int ftruncate(int fd, off_t size) {
    char path[PATH_MAX];
    if (!ours(fd, path)) return syscall(SYS_ftruncate, fd, size);
    pthread_mutex_lock(&lock);
    int now, error = due(&now), done = -1;
    if (!error) {
        if (cuts()) {
            struct undo *undo = note(TRUNCATE);
            hold(undo, fd);
            keep_old(undo, size, undo->size);
        }
        done = syscall(SYS_ftruncate, fd, size);
        if (now) finish();
    }
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}
int ftruncate64(int fd, off_t size) { return ftruncate(fd, size); }

static int open_as(int dir, const char *name, int flags, mode_t mode) {
    char path[PATH_MAX];
    int there = syscall(SYS_faccessat, dir, name, F_OK) == 0;
    /* A file that is emptied by being opened is a deed too, but none of ours does that to a file that it did not just make. */
    if (!(flags & O_CREAT) || there || !named(dir, name, path)) return syscall(SYS_openat, dir, name, flags, mode);
    pthread_mutex_lock(&lock);
    int now, error = due(&now), done = -1;
    if (!error && room == 0 && !(freed && syscall(SYS_faccessat, AT_FDCWD, freed, F_OK) == 0)) error = ENOSPC;
    if (!error) {
        if (cuts()) strcpy(note(CREATE)->name, path);
        done = syscall(SYS_openat, dir, name, flags, mode);
        if (now) finish();
    }
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}

static mode_t mode_of(int flags, va_list more) { return flags & (O_CREAT | O_TMPFILE) ? va_arg(more, mode_t) : 0; }
int open(const char *name, int flags, ...) { va_list m; va_start(m, flags); mode_t mode = mode_of(flags, m); va_end(m); return open_as(AT_FDCWD, name, flags, mode); }
int open64(const char *name, int flags, ...) { va_list m; va_start(m, flags); mode_t mode = mode_of(flags, m); va_end(m); return open_as(AT_FDCWD, name, flags, mode); }
int openat(int dir, const char *name, int flags, ...) { va_list m; va_start(m, flags); mode_t mode = mode_of(flags, m); va_end(m); return open_as(dir, name, flags, mode); }
int openat64(int dir, const char *name, int flags, ...) { va_list m; va_start(m, flags); mode_t mode = mode_of(flags, m); va_end(m); return open_as(dir, name, flags, mode); }

int mkdirat(int dir, const char *name, mode_t mode) {
    char path[PATH_MAX];
    if (syscall(SYS_faccessat, dir, name, F_OK) == 0 || !named(dir, name, path)) return syscall(SYS_mkdirat, dir, name, mode);
    pthread_mutex_lock(&lock);
    int now, error = due(&now), done = -1;
    if (!error) {
        if (cuts()) strcpy(note(FOLDER)->name, path);
        done = syscall(SYS_mkdirat, dir, name, mode);
        if (now) finish();
    }
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}
int mkdir(const char *name, mode_t mode) { return mkdirat(AT_FDCWD, name, mode); }

/* A second name for what loses this one, so that it can come back. */
static void save(const char *path, char *kept) {
    snprintf(kept, PATH_MAX, "%s/%ld", trash, removed++);
    if (syscall(SYS_linkat, AT_FDCWD, path, AT_FDCWD, kept, 0) != 0) kept[0] = 0;
}

int renameat2(int from_dir, const char *from, int to_dir, const char *to, unsigned flags) {
    char old[PATH_MAX], new[PATH_MAX];
    if (!named(from_dir, from, old) || !named(to_dir, to, new)) return syscall(SYS_renameat2, from_dir, from, to_dir, to, flags);
    pthread_mutex_lock(&lock);
    int now, error = due(&now), done = -1;
    if (!error) {
        if (cuts()) {
            struct undo *undo = note(RENAME);
            strcpy(undo->name, old);
            strcpy(undo->to, new);
            save(new, undo->kept);
        }
        done = syscall(SYS_renameat2, from_dir, from, to_dir, to, flags);
        if (now) finish();
    }
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}
int renameat(int from_dir, const char *from, int to_dir, const char *to) { return renameat2(from_dir, from, to_dir, to, 0); }
int rename(const char *from, const char *to) { return renameat2(AT_FDCWD, from, AT_FDCWD, to, 0); }

int unlinkat(int dir, const char *name, int flags) {
    char path[PATH_MAX];
    if (!named(dir, name, path) || syscall(SYS_faccessat, dir, name, F_OK) != 0) return syscall(SYS_unlinkat, dir, name, flags);
    pthread_mutex_lock(&lock);
    int now, error = due(&now), done = -1;
    if (!error) {
        if (cuts() && !(flags & AT_REMOVEDIR)) {
            struct undo *undo = note(REMOVE);
            strcpy(undo->name, path);
            save(path, undo->kept);
        }
        done = syscall(SYS_unlinkat, dir, name, flags);
        if (now) finish();
    }
    pthread_mutex_unlock(&lock);
    return error ? fail(error) : done;
}
int unlink(const char *name) { return unlinkat(AT_FDCWD, name, 0); }
int rmdir(const char *name) { return unlinkat(AT_FDCWD, name, AT_REMOVEDIR); }
