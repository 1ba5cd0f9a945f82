#include "core/document/document.h"

#include "core/document/json_positions.h"

#include <array>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace shaftwright
{
namespace
{

/// Word for the reason of a failed call.
std::string reasonOf(int error)
{
    switch (error) {
    case ENOENT:
    case ENOTDIR:
        return "not_found";
    case EACCES:
    case EPERM:
    case EROFS:
        return "no_permission";
    case EISDIR:
        return "directory";
    case ENOSPC:
    case EDQUOT:
        return "no_space";
    default:
        return "io_error";
    }
}

ReadError fileError(const char* code, const std::string& path, const std::string& reason)
{
    // What is missing when writing is the folder, never the file.
    const bool folder = reason == "not_found" && std::string_view(code) == "file-unwritable";
    ReadError error;
    error.code = code;
    error.file = path;
    error.values = {{"reason", folder ? std::string("no_folder") : reason}};
    return error;
}

/// A descriptor that closes itself.
class Descriptor
{
public:
    explicit Descriptor(int number) : m_number(number) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor()
    {
        if (m_number >= 0)
            ::close(m_number);
    }
    [[nodiscard]] int number() const { return m_number; }
    /// Closes now; false when the system reports a late error.
    bool close()
    {
        const int number = m_number;
        m_number = -1;
        return ::close(number) == 0;
    }

private:
    int m_number;
};

/// Target of a symbolic link; the path itself when there is no such file yet.
std::string resolved(const std::string& path)
{
    char* real = ::realpath(path.c_str(), nullptr);
    if (real == nullptr)
        return path;
    std::string out(real);
    std::free(real);
    return out;
}

bool writeAll(int descriptor, std::string_view text)
{
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0) {
            if (errno == EINTR)
                continue;
            return false;
        }
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

} // namespace

LoadedFile loadFile(const std::string& path)
{
    LoadedFile loaded;
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (file.number() < 0) {
        loaded.error = fileError("file-unreadable", path, reasonOf(errno));
        return loaded;
    }
    std::string text;
    std::array<char, 65536> buffer{};
    for (;;) {
        const ssize_t count = ::read(file.number(), buffer.data(), buffer.size());
        if (count < 0) {
            if (errno == EINTR)
                continue;
            loaded.error = fileError("file-unreadable", path, reasonOf(errno));
            return loaded;
        }
        if (count == 0)
            break;
        text.append(buffer.data(), static_cast<std::size_t>(count));
        // The reader refuses what is longer; there is no need to fetch the rest.
        if (text.size() > greatestJsonBytes)
            break;
    }
    loaded.text = std::move(text);
    return loaded;
}

std::optional<ReadError> saveFile(const std::string& path, std::string_view text)
{
    const auto failed = [&](int error) { return fileError("file-unwritable", path, reasonOf(error)); };
    const std::string target = resolved(path);

    struct stat old {
    };
    const bool exists = ::stat(target.c_str(), &old) == 0;
    if (exists && S_ISDIR(old.st_mode))
        return failed(EISDIR);
    if (exists && S_ISREG(old.st_mode) && old.st_size == static_cast<off_t>(text.size())) {
        const LoadedFile present = loadFile(target);
        if (present.text && *present.text == text)
            return std::nullopt;
    }
    // A file that was made read-only is not replaced behind its owner's back.
    if (exists && ::access(target.c_str(), W_OK) != 0)
        return failed(errno);

    const std::size_t slash = target.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : slash == 0 ? "/" : target.substr(0, slash);
    const std::string name = slash == std::string::npos ? target : target.substr(slash + 1);
    std::string beside;
    int number = -1;
    for (int attempt = 0; attempt < 100 && number < 0; ++attempt) {
        beside = folder + "/." + name + "." + std::to_string(::getpid()) + "-" + std::to_string(attempt) + ".tmp";
        number = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (number < 0 && errno != EEXIST)
            return failed(errno);
    }
    if (number < 0)
        return failed(EEXIST);
    Descriptor file(number);
    const auto giveUp = [&](int error) {
        ::unlink(beside.c_str());
        return failed(error);
    };
    if (exists) {
        // The owner can be kept by a privileged user only; the rest of the saving does not depend on it.
        if (::fchown(file.number(), old.st_uid, old.st_gid) != 0)
            errno = 0;
        if (::fchmod(file.number(), old.st_mode & 07777u) != 0)
            return giveUp(errno);
    }
    if (!writeAll(file.number(), text) || ::fsync(file.number()) != 0 || !file.close())
        return giveUp(errno);
    if (::rename(beside.c_str(), target.c_str()) != 0)
        return giveUp(errno);
    const Descriptor directory(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (directory.number() >= 0)
        ::fsync(directory.number()); // the new name on the disk; the content is safe without it
    return std::nullopt;
}

} // namespace shaftwright
