#include "core/document/document.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>

using namespace shaftwright;
namespace fs = std::filesystem;

namespace
{

struct Folder {
    fs::path path;
    Folder()
    {
        std::string name = (fs::temp_directory_path() / "shaftwright-test-XXXXXX").string();
        REQUIRE(::mkdtemp(name.data()) != nullptr);
        path = name;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder()
    {
        std::error_code ignored;
        fs::permissions(path, fs::perms::owner_all, ignored);
        fs::remove_all(path, ignored);
    }
    [[nodiscard]] std::string file(const char* name) const { return (path / name).string(); }
    [[nodiscard]] std::size_t count() const
    {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(path), fs::directory_iterator()));
    }
};

std::string wordOf(const ReadError& error, const char* name)
{
    const TextValue* value = error.values.find(name);
    REQUIRE(value != nullptr);
    return std::get<std::string>(*value);
}

} // namespace

TEST_CASE("what is saved is loaded again and nothing is left beside it", "[core][document]")
{
    const Folder folder;
    const std::string path = folder.file("a.shaftwright");
    CHECK_FALSE(saveFile(path, "first"));
    CHECK(loadFile(path).text == "first");
    CHECK_FALSE(saveFile(path, "second, longer"));
    CHECK(loadFile(path).text == "second, longer");
    CHECK_FALSE(saveFile(path, ""));
    CHECK(loadFile(path).text == "");
    CHECK(folder.count() == 1);
}

TEST_CASE("saving the same bytes rewrites nothing", "[core][document]")
{
    const Folder folder;
    const std::string path = folder.file("a.shaftwright");
    REQUIRE_FALSE(saveFile(path, "same"));
    struct stat before {
    };
    REQUIRE(::stat(path.c_str(), &before) == 0);
    CHECK_FALSE(saveFile(path, "same"));
    struct stat after {
    };
    REQUIRE(::stat(path.c_str(), &after) == 0);
    CHECK(after.st_ino == before.st_ino);
    CHECK(after.st_mtim.tv_nsec == before.st_mtim.tv_nsec);
    CHECK_FALSE(saveFile(path, "SAME"));
    REQUIRE(::stat(path.c_str(), &after) == 0);
    CHECK(after.st_ino != before.st_ino);
}

TEST_CASE("permissions stay and a symbolic link is followed", "[core][document]")
{
    const Folder folder;
    const std::string path = folder.file("a.shaftwright");
    const std::string link = folder.file("link.shaftwright");
    REQUIRE_FALSE(saveFile(path, "one"));
    REQUIRE(::chmod(path.c_str(), 0640) == 0);
    fs::create_symlink(path, link);
    CHECK_FALSE(saveFile(link, "two"));
    CHECK(loadFile(path).text == "two");
    CHECK(fs::is_symlink(link));
    struct stat after {
    };
    REQUIRE(::stat(path.c_str(), &after) == 0);
    CHECK((after.st_mode & 07777u) == 0640u);
}

TEST_CASE("a file that cannot be read or written says why", "[core][document]")
{
    const Folder folder;
    const LoadedFile missing = loadFile(folder.file("none.shaftwright"));
    REQUIRE(missing.error);
    CHECK(missing.error->code == "file-unreadable");
    CHECK(missing.error->file == folder.file("none.shaftwright"));
    CHECK(wordOf(*missing.error, "reason") == "not_found");
    CHECK(wordOf(*loadFile(folder.path.string()).error, "reason") == "directory");

    const auto in_missing_folder = saveFile(folder.file("none/a.shaftwright"), "x");
    REQUIRE(in_missing_folder);
    CHECK(in_missing_folder->code == "file-unwritable");
    CHECK(wordOf(*in_missing_folder, "reason") == "no_folder");
    const auto on_folder = saveFile(folder.path.string(), "x");
    REQUIRE(on_folder);
    CHECK(wordOf(*on_folder, "reason") == "directory");
}

TEST_CASE("an unwritable folder or file keeps its old content", "[core][document]")
{
    if (::geteuid() == 0)
        return; // permissions do not bind the super-user
    const Folder folder;
    const std::string path = folder.file("a.shaftwright");
    REQUIRE_FALSE(saveFile(path, "old"));
    REQUIRE(::chmod(path.c_str(), 0444) == 0);
    const auto read_only = saveFile(path, "new");
    REQUIRE(read_only);
    CHECK(wordOf(*read_only, "reason") == "no_permission");
    REQUIRE(::chmod(path.c_str(), 0644) == 0);
    REQUIRE(::chmod(folder.path.c_str(), 0555) == 0);
    const auto closed_folder = saveFile(path, "new");
    REQUIRE(closed_folder);
    CHECK(wordOf(*closed_folder, "reason") == "no_permission");
    CHECK(loadFile(path).text == "old");
}

TEST_CASE("a full disk leaves the old file and says so", "[core][document]")
{
    // /dev/full fails every write with ENOSPC; the file beside it cannot be made there, so the reason is another one.
    const auto error = saveFile("/dev/full/x", "y");
    REQUIRE(error);
    CHECK(error->code == "file-unwritable");
}
