#include "app/workers.h"

#include <algorithm>
#include <utility>

namespace furnish {

Workers::Workers(Work work) : work_(std::move(work)), finished_(work_.ahead, false) {
  try {
    for (std::size_t i = 0; i < work_.threads; ++i) threads_.emplace_back([this, i] { make(i); });
    for (std::size_t i = 0; i < work_.waiters; ++i) threads_.emplace_back([this] { keep(); });
  } catch (...) {
    end();
    throw;
  }
}

Workers::~Workers() {
  end();
}

void Workers::end() {
  {
    const std::scoped_lock lock(mutex_);
    ending_ = true;
  }
  may_begin_.notify_all();
  may_keep_.notify_all();
  for (std::thread& one : threads_) one.join();
  threads_.clear();
}

void Workers::make(std::size_t thread) {
  while (true) {
    std::unique_lock lock(mutex_);
    may_begin_.wait(
        lock, [&] { return ending_ || begun_ == work_.count || begun_ < taken_ + work_.ahead; });
    if (ending_ || begun_ == work_.count) return;
    const std::size_t number = begun_++;
    lock.unlock();
    std::exception_ptr fault;
    try {
      work_.make(thread, number);
    } catch (...) {
      fault = std::current_exception();
    }
    lock.lock();
    if (fault) {
      finish(number, fault);
      continue;
    }
    made_.push_back(number);
    lock.unlock();
    may_keep_.notify_one();
  }
}

void Workers::keep() {
  while (true) {
    std::unique_lock lock(mutex_);
    may_keep_.wait(lock, [&] { return ending_ || !made_.empty(); });
    if (ending_) return;
    const std::size_t number = made_.front();
    made_.pop_front();
    lock.unlock();
    std::exception_ptr fault;
    try {
      work_.keep(number);
    } catch (...) {
      fault = std::current_exception();
    }
    lock.lock();
    finish(number, fault);
  }
}

void Workers::finish(std::size_t number, const std::exception_ptr& fault) {
  if (fault) faults_[number] = fault;
  finished_[number % work_.ahead] = true;
  done_.notify_one();
}

void Workers::wait_for(std::size_t number) {
  std::unique_lock lock(mutex_);
  taken_ = number;
  may_begin_.notify_all();
  done_.wait(lock, [&] { return finished_[number % work_.ahead]; });
  finished_[number % work_.ahead] = false;
  if (const auto fault = faults_.extract(number)) std::rethrow_exception(fault.mapped());
}

std::size_t threads_for(std::size_t sheets, int asked) {
  // Each has to open the fonts, which costs as much as some sheets.
  constexpr std::size_t sheets_each = 4;
  const std::size_t most = asked > 0 ? static_cast<std::size_t>(asked)
                                     : std::max(1U, std::thread::hardware_concurrency());
  return std::clamp<std::size_t>(sheets / sheets_each, 1, most);
}
}  // namespace furnish
