/* Is a file saved whole or not at all?
 *
 * The command is no library, so its source is taken in here.
 */
#include "apps/cli/atomic_save.c"

#include <dirent.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static char folder[64];

static const char *in_folder(const char *name)
{
    static char   paths[4][256];
    static size_t next;
    char         *path = paths[next++ % 4];
    snprintf(path, 256, "%s/%s", folder, name);
    return path;
}

static int open_folder(void **state)
{
    (void)state;
    snprintf(folder, sizeof folder, "%s/atomic_save_XXXXXX", P_tmpdir);
    return mkdtemp(folder) != NULL ? 0 : -1;
}

static size_t empty(const char *path)
{
    size_t         count = 0;
    DIR           *list  = opendir(path);
    struct dirent *each;
    if (list == NULL)
        return 0;
    while ((each = readdir(list)) != NULL) {
        char inside[600];
        if (strcmp(each->d_name, ".") == 0 || strcmp(each->d_name, "..") == 0)
            continue;
        snprintf(inside, sizeof inside, "%s/%s", path, each->d_name);
        if (unlink(inside) != 0) {
            count += empty(inside);
            rmdir(inside);
        }
        count++;
    }
    closedir(list);
    return count;
}

static int close_folder(void **state)
{
    (void)state;
    empty(folder);
    return rmdir(folder);
}

static size_t entries_of_folder(void)
{
    size_t         count = 0;
    DIR           *list  = opendir(folder);
    struct dirent *each;
    assert_non_null(list);
    while ((each = readdir(list)) != NULL)
        count += each->d_name[0] != '.' ? 1 : 0;
    closedir(list);
    return count;
}

static void put(const char *path, const char *text)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

static void assert_holds(const char *path, const char *text)
{
    char  bytes[256];
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    size_t length = fread(bytes, 1, sizeof bytes - 1, file);
    bytes[length] = '\0';
    fclose(file);
    assert_string_equal(bytes, text);
}

static mode_t mode_of(const char *path)
{
    struct stat about;
    assert_int_equal(stat(path, &about), 0);
    return about.st_mode & 07777;
}

static void save(const char *path, const char *text)
{
    const char *why = NULL;
    if (atomic_save(path, text, strlen(text), &why) != ATOMIC_SAVED)
        fail_msg("%s: %s", path, why);
}

static void new_file_gets_the_mode_of_the_mask(void **state)
{
    (void)state;
    const mode_t mask = umask(027);
    save(in_folder("new.yaml"), "a: 1\n");
    umask(mask);
    assert_holds(in_folder("new.yaml"), "a: 1\n");
    assert_int_equal(mode_of(in_folder("new.yaml")), 0640);
    assert_int_equal(entries_of_folder(), 1);
}

static void old_file_keeps_its_mode(void **state)
{
    (void)state;
    put(in_folder("old.yaml"), "a: 1\n");
    assert_int_equal(chmod(in_folder("old.yaml"), 0604), 0);
    save(in_folder("old.yaml"), "a: 2\n");
    assert_holds(in_folder("old.yaml"), "a: 2\n");
    assert_int_equal(mode_of(in_folder("old.yaml")), 0604);
    assert_int_equal(entries_of_folder(), 1);
}

static void link_is_followed_and_stays_a_link(void **state)
{
    (void)state;
    struct stat about;
    assert_int_equal(mkdir(in_folder("deep"), 0755), 0);
    put(in_folder("deep/real.yaml"), "a: 1\n");
    assert_int_equal(symlink("deep/real.yaml", in_folder("first")), 0);
    assert_int_equal(symlink("first", in_folder("second")), 0);
    save(in_folder("second"), "a: 2\n");
    assert_holds(in_folder("deep/real.yaml"), "a: 2\n");
    assert_int_equal(lstat(in_folder("second"), &about), 0);
    assert_true(S_ISLNK(about.st_mode));
    assert_int_equal(lstat(in_folder("first"), &about), 0);
    assert_true(S_ISLNK(about.st_mode));
}

static void link_to_nothing_makes_its_target(void **state)
{
    (void)state;
    assert_int_equal(symlink("later.yaml", in_folder("link")), 0);
    save(in_folder("link"), "a: 1\n");
    assert_holds(in_folder("later.yaml"), "a: 1\n");
}

static void links_in_a_circle_are_an_error(void **state)
{
    (void)state;
    const char *why = NULL;
    assert_int_equal(symlink("b", in_folder("a")), 0);
    assert_int_equal(symlink("a", in_folder("b")), 0);
    assert_int_equal(atomic_save(in_folder("a"), "x", 1, &why), ATOMIC_UNCHANGED);
    assert_non_null(why);
    assert_int_equal(entries_of_folder(), 2);
}

static void failure_changes_nothing_and_leaves_nothing(void **state)
{
    (void)state;
    const char *why = NULL;
    assert_int_equal(mkdir(in_folder("folder"), 0755), 0);
    assert_int_equal(atomic_save(in_folder("folder"), "x", 1, &why), ATOMIC_UNCHANGED);
    assert_non_null(why);
    assert_int_equal(atomic_save(in_folder("missing/file"), "x", 1, &why), ATOMIC_UNCHANGED);
    assert_int_equal(entries_of_folder(), 1);
}

static void full_device_is_an_error(void **state)
{
    (void)state;
    const char *why = NULL;
    assert_int_equal(atomic_save("/dev/full", "x", 1, &why), ATOMIC_PARTLY);
    assert_non_null(why);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(new_file_gets_the_mode_of_the_mask, open_folder,
                                        close_folder),
        cmocka_unit_test_setup_teardown(old_file_keeps_its_mode, open_folder, close_folder),
        cmocka_unit_test_setup_teardown(link_is_followed_and_stays_a_link, open_folder,
                                        close_folder),
        cmocka_unit_test_setup_teardown(link_to_nothing_makes_its_target, open_folder,
                                        close_folder),
        cmocka_unit_test_setup_teardown(links_in_a_circle_are_an_error, open_folder, close_folder),
        cmocka_unit_test_setup_teardown(failure_changes_nothing_and_leaves_nothing, open_folder,
                                        close_folder),
        cmocka_unit_test(full_device_is_an_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
